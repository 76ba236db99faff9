import { describe, expect, it } from 'vitest';
import { insideChecks } from '../../jigs/shared/checks/inside.ts';
import { checksOf, solidsOf } from '../../jigs/spine-rest/fixture.ts';
import type { Question } from '../../jigs/spine-rest/checks/question.ts';
import { solve } from '../../jigs/spine-rest/solve.ts';
import { answerAll } from '../../src/check/answers.ts';
import type { SetUp } from '../../src/check/set-up.ts';
import { chain } from '../../src/core/result.ts';
import { fabricationChecks } from '../../src/check/rules.ts';
import { circle } from '../../src/geometry/loop.ts';
import { shift } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import type { Part, Placement } from '../../src/model/part.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

const example = examplesOf('spine-rest').find(({ file }) => file.startsWith('paring'));
if (!example) throw new Error('no example to sabotage');
const whole = valueOf(valueOf(solve(example.design)).question());
// One pass is enough to be wrong in, and keeps the tests quick.
const sound: Question = {
  ...whole,
  plan: {
    ...whole.plan,
    settings: whole.plan.settings.slice(0, 2),
    lines: whole.plan.lines.filter(({ blade }) => blade === whole.design.blades[0]?.name),
  },
  stands: whole.stands.slice(0, 1),
  design: { ...whole.design, blades: whole.design.blades.slice(0, 1) },
};

/** Whether the fixture's own parts are asked about too: no pair with blade or machine has the name. */
const asksWithin = (setUps: readonly SetUp[], kind: RegExp): boolean =>
  kind.test('inside/all') || setUps.every(({ asked }) => asked.length === 0);

/** Checks of a kind that fail: the others are not looked at, which is what takes long. */
const failing = (q: Question, kind: RegExp): string[] => {
  const { setUps, assemblies } = valueOf(solidsOf(q));
  const asked = setUps.map((setUp) => ({
    ...setUp,
    asked: setUp.asked.filter(({ id }) => kind.test(id)),
  }));
  return [
    ...answerAll(asked),
    ...(asksWithin(asked, kind)
      ? assemblies.flatMap((one) => valueOf(insideChecks(one))).filter(({ id }) => kind.test(id))
      : []),
    ...fabricationChecks(q.parts, q.design.making.prints.nozzle).filter(({ id }) => kind.test(id)),
  ]
    .filter(({ passed }) => !passed)
    .map(({ id }) => id);
};

const moving =
  (names: RegExp, by: Vec3) =>
  (placement: Placement): Placement =>
    names.test(placement.name) ? { ...placement, frame: shift(placement.frame, by) } : placement;

const moved = (names: RegExp, by: Vec3): Question => ({
  ...sound,
  place: (id) => sound.place(id).map(moving(names, by)),
});

const withPart = (id: string, change: (part: Part) => Part): Question => ({
  ...sound,
  parts: sound.parts.map((part) => (part.id === id ? change(part) : part)),
});

describe('sabotage of a sound spine rest', () => {
  it('is sound before', () => {
    expect(failing(sound, /./)).toEqual([]);
  });

  const cases: readonly (readonly [string, string, () => Question])[] = [
    ['the nose set too near the belt', 'clearance/nose/belt', () => moved(/^nose$/, [0, -0.2, 0])],
    ['the nose packed up', 'contact/blade/nose', () => moved(/^nose$/, [0, 0, 0.1])],
    ['the nose too low', 'contact/blade/nose', () => moved(/^nose$/, [0, 0, -0.1])],
    ['the step set back', 'contact/blade/step', () => moved(/^step$/, [0, 0.2, 0])],
    ['the base off the rest', 'contact/base/rest', () => moved(/^base$/, [0, 0, 0.3])],
    ['the packer off the base', 'contact/packer/base', () => moved(/^packer$/, [0, 0, 0.3])],
    ['a nose screw in the way', 'inside/all', () => moved(/^nose-screw-1/, [0, 30, 0])],
    ['the pad against the belt', 'clearance/pad/belt', () => moved(/^push-pad$/, [0, -1, 0])],
    ['the base against the wheels', 'clearance/base/belt', () => moved(/^base$/, [0, -12, 0])],
    [
      'a mounting screw in front of the platen',
      'clearance/mount/belt',
      () => moved(/^mount-screw-1$/, [50, -35, 20]),
    ],
    [
      'the collar clamped too near the plunge',
      'contact/collar/nose',
      () => ({
        ...sound,
        onBlade: sound.onBlade.map((p) => ({ ...p, frame: shift(p.frame, [5, 0, 0]) })),
      }),
    ],
    [
      'a hole at the edge',
      'fabrication/nose/web',
      () =>
        withPart('nose', (part) => ({
          ...part,
          layers: part.layers.map((layer) => ({
            ...layer,
            profile: {
              ...layer.profile,
              holes: [...layer.profile.holes, circle([0, 3], 2.5)],
            },
          })),
        })),
    ],
    [
      'a hand that must be farther away',
      'clearance/hand/belt',
      () => ({ ...sound, v: { ...sound.v, handDistance: 120 } }),
    ],
  ];
  for (const [what, id, make] of cases) {
    it(`notices ${what}`, () => {
      expect(failing(make(), new RegExp(`^${id}$`))).toContain(id);
    });
  }

  it('passes nothing when a part is missing', () => {
    const without = { ...sound, parts: sound.parts.filter(({ id }) => id !== 'nose') };
    const result = chain(solidsOf(without), (solids) => checksOf(without, solids));
    expect(result.ok).toBe(false);
    expect(result.issues.map(({ code }) => code)).toContain('part-missing');
  });

  it('counts a placement that is gone as failed', () => {
    const without: Question = {
      ...sound,
      place: (id) => sound.place(id).filter(({ name }) => name !== 'nose'),
    };
    const failed = failing(without, /\/nose(?:\/|$)/);
    expect(failed).toContain('clearance/nose/belt');
    expect(failed).toContain('contact/blade/nose');
  });
});
