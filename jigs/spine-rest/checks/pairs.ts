import {
  bladeMesh,
  bodyOf,
  chain,
  checkPairs,
  createWorkspace,
  machineBodies,
  notComputed,
  ok,
  pairResult,
  partMeshes,
  prepare,
  worstOf,
  WORLD,
  type Body,
  type CheckResult,
  type PairRule,
  type PairTerms,
  type PartMeshes,
  type Placement,
  type Result,
} from '../../../src/family/index.ts';
import type { Stand } from '../site.ts';
import { parameterPath, words, type Question } from './question.ts';
import { bladeMotion, movementsOf, poseOf, shiftMotion, type Movement } from './sweeps.ts';

type Name = keyof typeof words.names;

/** A pair that is asked about, once for every stand and blade; the worst answer is the result. */
interface Asked {
  readonly id: string;
  readonly rule: PairRule;
  readonly fix: string;
  readonly parameter?: string;
}

const FAR = 40;
const CHORD = 0.005;

const clear = (a: Name, b: Name, gap: number, fix: string, parameter?: string): Asked => ({
  id: `clearance/${a}/${b}`,
  rule: { kind: 'clear', a, b, gap },
  fix,
  ...(parameter === undefined ? {} : { parameter }),
});

/** What of the fixture must keep clear of what of the machine, standing at each setting. */
const machinePairs = ({ v }: Question): Asked[] => {
  const { fix } = words;
  const running = v.runningClearance;
  const moving: Name[] = ['base', 'mount', 'nose', 'step', 'push'];
  return [
    ...moving.flatMap((a) => [
      clear(a, 'belt', running, fix.belt, parameterPath('noseGap')),
      clear(a, 'platen', running, fix.clearance),
      clear(a, 'wheels', running, fix.clearance),
      clear(a, 'guards', running, fix.clearance),
    ]),
    ...(['nose', 'step', 'push'] as const).map((a) => clear(a, 'rest', 1, fix.clearance)),
    {
      id: 'contact/base/rest',
      rule: { kind: 'touch', a: 'base', b: 'rest', tolerance: 0.02, apart: [0, 0, 1] },
      fix: fix.mount,
      parameter: parameterPath('mount'),
    },
    // Blade and belt press on each other there: the pad is held off by the blade itself.
    clear('pad', 'belt', 0.05, fix.pushHigh, parameterPath('padMargin')),
    clear('hand', 'belt', v.handDistance, fix.hand, parameterPath('handDistance')),
    clear('hand', 'wheels', v.handDistance, fix.hand, parameterPath('handDistance')),
  ];
};

/** What the blade and what it carries must keep clear of, over stroke and rocking. */
const bladePairs = ({ v }: Question): Asked[] => {
  const { fix } = words;
  const running = v.runningClearance;
  return [
    ...(['base', 'mount', 'rest', 'wheels', 'guards'] as const).map((b) =>
      clear('blade', b, 0.5, fix.blade),
    ),
    ...(['belt', 'platen', 'wheels'] as const).map((b) =>
      clear('tang', b, running, fix.blade, parameterPath('plungeMargin')),
    ),
    ...(['base', 'mount', 'rest', 'guards', 'push'] as const).map((b) =>
      clear('tang', b, 0.5, fix.blade),
    ),
    clear('tang', 'nose', 0.02, fix.blade),
    clear('tang', 'step', 0.02, fix.blade),
    ...(['belt', 'platen', 'wheels'] as const).map((b) =>
      clear('collar', b, running, fix.collar, parameterPath('wing')),
    ),
    ...(['base', 'mount', 'rest', 'guards', 'step', 'push'] as const).map((b) =>
      clear('collar', b, 0.5, fix.collar, parameterPath('wing')),
    ),
  ];
};

/** The spine on seat and step over the whole stroke, never rocked. */
const contactPairs = (): Asked[] => [
  {
    id: 'contact/blade/nose',
    rule: { kind: 'touch', a: 'blade', b: 'nose', tolerance: 0.03, apart: [0, 0, 1] },
    fix: words.fix.contactOpen,
  },
  {
    id: 'contact/blade/step',
    rule: { kind: 'touch', a: 'blade', b: 'step', tolerance: 0.03, apart: [0, -1, 0] },
    fix: words.fix.contactOpen,
  },
];

const termsOf = (asked: Asked, movements: readonly Movement[]): PairTerms => {
  const { rule, id, fix, parameter } = asked;
  const [a, b] = [words.names[rule.a as Name], words.names[rule.b as Name]];
  return {
    id,
    label: rule.kind === 'touch' ? words.labels.contact(a, b) : words.labels.pair(a, b),
    basis: id.startsWith('clearance/hand') ? words.basis.practice : words.basis.setting,
    fix,
    ...(parameter === undefined ? {} : { parameter }),
    pose: poseOf(movements),
  };
};

/** Placements that move as one, by the name of their body. */
const groupOf = ({ name, carrier }: Placement): Name => {
  if (/^(mount|clamp)/.test(name)) return 'mount';
  if (carrier === 'ground') return 'base';
  if (carrier === 'hand') return name === 'push-pad' ? 'pad' : 'push';
  return carrier === 'blade' ? 'collar' : carrier === 'nose' ? 'nose' : 'step';
};

/** The box in which the hand holds the push block. */
const handBody = ({ context, v }: Question, motion: Body['motion']): Result<Body> => {
  const { push } = context.l;
  const [front, back] = [push.padReach + push.grip, push.padReach + push.depth];
  const [low, high] = [v.plate + push.footHeight, v.plate + push.handle];
  const shape = {
    kind: 'box',
    frame: { ...WORLD, origin: [0, (front + back) / 2, (low + high) / 2] },
    size: [2 * push.half, back - front, high - low],
  } as const;
  return chain(prepare('hand', shape), (solid) =>
    ok({ name: 'hand', solids: [solid], chordError: 0, ...(motion ? { motion } : {}) }),
  );
};

type Bodies = ReadonlyMap<Name, Body>;

/** Bodies of the fixture at the settings of one stand, moving with them. */
const fixtureBodies = (
  q: Question,
  meshes: PartMeshes,
  movements: readonly Movement[],
): Result<Map<Name, Body>> => {
  const first = movements[0];
  if (!first) return ok(new Map());
  const start = q.place(first.setting);
  const yOf = (setting: string, name: string): number =>
    q.place(setting).find((p) => p.name === name)?.frame.origin[1] ?? 0;
  const shiftOf = (name: string) => (setting: string) =>
    yOf(setting, name) - yOf(first.setting, name);
  const stepMotion = shiftMotion(movements, shiftOf('step'));
  const handMotion = shiftMotion(movements, shiftOf('push-block'));
  const handAt = shiftMotion(movements, (setting) => yOf(setting, 'push-pad'));
  const blade = bladeMotion(movements);
  const motions: Partial<Record<Name, Body['motion']>> = {
    step: stepMotion,
    push: handMotion,
    pad: handMotion,
    collar: blade,
  };
  const bodies = new Map<Name, Body>();
  const names: Name[] = ['base', 'mount', 'nose', 'step', 'push', 'pad', 'collar'];
  for (const name of names) {
    const placements =
      name === 'collar'
        ? q.onBlade
        : start.filter((p) => p.carrier !== 'blade' && groupOf(p) === name);
    if (placements.length === 0) continue;
    const body = bodyOf(name, placements, meshes, motions[name]);
    if (!body.ok) return body;
    bodies.set(name, body.value);
  }
  return chain(handBody(q, handAt), (hand) => ok(bodies.set('hand', hand)));
};

const bladeBodies = (q: Question, name: string, movements: readonly Movement[]) => {
  const blade = q.design.blades.find((b) => b.name === name);
  const bodies = new Map<Name, Body>();
  if (!blade) return ok(bodies);
  const meshes = bladeMesh(blade, { chord: CHORD });
  const motion = bladeMotion(movements);
  for (const [key, mesh] of [
    ['blade', meshes.blade],
    ['tang', meshes.tang],
  ] as const) {
    const solid = prepare(key, { kind: 'mesh', mesh });
    if (!solid.ok) return solid;
    bodies.set(key, { name: key, solids: [solid.value], chordError: CHORD, motion });
  }
  return ok(bodies);
};

/** Answers what is asked about bodies of one stand; a missing body of the fixture has failed. */
const answer = (
  asked: readonly Asked[],
  bodies: Bodies,
  movements: readonly Movement[],
  machine: ReadonlySet<string>,
): CheckResult[] => {
  const work = createWorkspace();
  return asked.flatMap((question): CheckResult[] => {
    const { rule } = question;
    const terms = termsOf(question, movements);
    const [a, b] = [bodies.get(rule.a as Name), bodies.get(rule.b as Name)];
    // A grinder may have no wheel, platen or keep-out; a fixture has all its parts.
    if (!b && machine.has(rule.b)) return [];
    const kind = rule.kind === 'touch' ? 'contact' : 'clearance';
    if (!a || !b) return [notComputed(terms, kind, [])];
    const result = checkPairs([a, b], [rule], { otherwise: 0, within: FAR, work });
    if (!result.ok) return [notComputed(terms, kind, result.issues)];
    return result.value.map((pair) => pairResult(pair, terms));
  });
};

const MACHINE: ReadonlySet<string> = new Set(['belt', 'platen', 'wheels', 'rest', 'guards']);

/** One stand: its belt and backing, and the settings that use them. */
const standResults = (
  q: Question,
  meshes: PartMeshes,
  stand: Stand,
  settings: readonly string[],
): Result<CheckResult[]> => {
  const { grinder } = q.design;
  const frame = { ...WORLD, origin: [0, stand.offset, -q.context.l.levels.stack] } as const;
  return chain(machineBodies(grinder, stand.belt, stand.backing, frame), (machine) => {
    const results: CheckResult[] = [];
    for (const [i, { name }] of q.design.blades.entries()) {
      const poses = settings.map((id) => q.poses(id, name));
      const { half } = q.context.l.nose;
      const all = poses.flatMap((list) => movementsOf(list, half, q.v.tipLift));
      const strokes = poses.flatMap((list) => movementsOf(list, half, 0));
      for (const [movements, asked] of [
        [all, i === 0 ? [...machinePairs(q), ...bladePairs(q)] : bladePairs(q)],
        [strokes, contactPairs()],
      ] as const) {
        const bodies = chain(fixtureBodies(q, meshes, movements), (fixture) =>
          chain(bladeBodies(q, name, movements), (carried) =>
            ok(
              new Map<Name, Body>([
                ...fixture,
                ...carried,
                ...Object.values(machine).map((body): [Name, Body] => [body.name as Name, body]),
              ]),
            ),
          ),
        );
        if (!bodies.ok) return bodies;
        results.push(...answer(asked, bodies.value, movements, MACHINE));
      }
    }
    return ok(results);
  });
};

/** Worst result of every question over all stands and blades, in the order first asked. */
export const worstById = (results: readonly CheckResult[]): CheckResult[] => {
  const ids = [...new Set(results.map(({ id }) => id))];
  return ids.flatMap((id) => worstOf(results.filter((result) => result.id === id)) ?? []);
};

/** Clearances and contacts of fixture, blade and machine over all settings, strokes and sides. */
export const pairChecks = (q: Question): Result<CheckResult[]> =>
  chain(partMeshes(q.parts), (meshes) => {
    const results: CheckResult[] = [];
    const done = new Set<string>();
    for (const stand of q.stands) {
      const key = JSON.stringify([stand.belt.id, stand.backing.id]);
      if (done.has(key)) continue;
      done.add(key);
      const settings = q.plan.settings
        .filter(({ belt, backing }) => belt === stand.belt.id && backing === stand.backing.id)
        .map(({ id }) => id);
      const found = standResults(q, meshes, stand, settings);
      if (!found.ok) return found;
      results.push(...found.value);
    }
    return ok(worstById(results));
  });
