import {
  all,
  bodyOf,
  chain,
  checkPairs,
  ok,
  pairResult,
  partMeshes,
  shift,
  WORLD,
  type Body,
  type CheckResult,
  type Motion,
  type PairRule,
  type Placement,
  type Result,
  type Sweep,
  type Vec3,
} from '../../../src/family/index.ts';
import { words, type Question } from './question.ts';

/** What stands where at every setting. */
export interface Assembled extends Pick<Question, 'parts' | 'place'> {
  readonly plan: { readonly settings: readonly { readonly id: string }[] };
}

/** Parts that are not meant to touch keep this far apart, mm. */
const APART = 0.1;
const CLOSED = 0.02;

const UP: Vec3 = [0, 0, 1];

/** Faces that must lie on each other, and the way the first comes off the second. */
export const FACES: readonly (readonly [string, string])[] = [
  ['nose', 'base'],
  ['packer', 'base'],
  ['step', 'nose'],
  ['step', 'packer'],
  ['feed-lug', 'step'],
  ['feed-bracket', 'packer'],
  ['push-block', 'step'],
  ['guide-strip-1', 'packer'],
  ['guide-strip-2', 'packer'],
  ['keeper-1', 'guide-strip-1'],
  ['keeper-2', 'guide-strip-2'],
];

/**
 * How each group of placements shifts along y from the first setting to the others, as one motion
 * that all its placements share.
 */
const motionsOf = (q: Assembled, fixed: readonly Placement[]): Map<string, Motion> => {
  const motions = new Map<string, Motion>();
  for (const { carrier, name, frame } of fixed) {
    if (motions.has(carrier)) continue;
    const sweeps = q.plan.settings.map(({ id }): Sweep => {
      const there = q.place(id).find((p) => p.name === name);
      const y = (there ?? { frame }).frame.origin[1] - frame.origin[1];
      return { kind: 'still', label: id, pose: shift(WORLD, [0, y, 0]) };
    });
    motions.set(carrier, sweeps);
  }
  return motions;
};

/**
 * The fixture's own parts among each other: what is meant to touch is closed where faces meet,
 * and nothing else comes within a tenth of a millimetre, at every setting: step, base and push
 * block stand elsewhere at each.
 */
export const insideChecks = (
  q: Assembled,
  contacts: readonly (readonly [string, string])[] = FACES,
): Result<CheckResult[]> => {
  const setting = q.plan.settings[0];
  const placements = setting ? q.place(setting.id) : [];
  const fixed = placements.filter(({ carrier }) => carrier !== 'blade');
  const motions = motionsOf(q, fixed);
  return chain(partMeshes(q.parts), (meshes) =>
    chain(
      all(fixed.map((p): Result<Body> => bodyOf(p.name, [p], meshes, motions.get(p.carrier)))),
      (bodies) => {
        const has = (name: string): boolean => fixed.some((p) => p.name === name);
        const faces = contacts.filter(([a, b]) => has(a) && has(b));
        const isFace = (a: string, b: string): boolean =>
          faces.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
        const touching = fixed.flatMap((p) =>
          p.touches
            .filter((other) => p.name < other && has(other) && !isFace(p.name, other))
            .map((other): PairRule => ({
              kind: 'ignore',
              a: p.name,
              b: other,
              reason: words.basis.geometry,
            })),
        );
        const closed = faces.map(([a, b]): PairRule => ({
          kind: 'touch',
          a,
          b,
          tolerance: CLOSED,
          apart: UP,
        }));
        const options = { otherwise: APART, within: APART };
        return chain(checkPairs(bodies, [...touching, ...closed], options), (pairs) =>
          ok(summary(pairs.map((pair) => ({ pair, result: resultOf(pair) })))),
        );
      },
    ),
  );
};

type Pair = Parameters<typeof pairResult>[0];

const resultOf = (pair: Pair): CheckResult => {
  const contact = pair.rule.kind === 'touch';
  return pairResult(pair, {
    id: `${contact ? 'contact' : 'inside'}/${pair.a}/${pair.b}`,
    label: contact ? words.labels.contact(pair.a, pair.b) : words.labels.pair(pair.a, pair.b),
    basis: words.basis.geometry,
    fix: contact ? words.fix.contactOpen : words.fix.inside,
    pose: (setting) => (setting === '' ? undefined : { setting }),
  });
};

/** Every contact, every failure, and one line for all the pairs that keep apart. */
const summary = (found: readonly { pair: Pair; result: CheckResult }[]): CheckResult[] => {
  const looked = found.filter(({ pair }) => pair.rule.kind !== 'ignore');
  const contacts = looked.filter(({ pair }) => pair.rule.kind === 'touch');
  const failed = looked.filter(({ pair, result }) => pair.rule.kind === 'clear' && !result.passed);
  const passed = looked.filter(({ pair, result }) => pair.rule.kind === 'clear' && result.passed);
  return [
    ...contacts.map(({ result }) => result),
    ...failed.map(({ result }) => result),
    {
      id: 'inside/all',
      label: words.labels.inside,
      kind: 'clearance',
      passed: failed.length === 0 && passed.length > 0,
      unit: 'mm',
      found: failed.length === 0 && passed.length > 0 ? APART : null,
      atLeast: APART,
      basis: words.basis.geometry,
      message: words.insideMessage(passed.length, failed.length, APART),
      fix: failed.length === 0 ? '' : words.fix.inside,
    },
  ];
};
