import {
  all,
  bodyOf,
  chain,
  checkPairs,
  ok,
  pairResult,
  partMeshes,
  type Body,
  type CheckResult,
  type Motion,
  type PairRule,
  type Placement,
  type Result,
  type Vec3,
} from '../../../src/family/index.ts';
import { words, type Question } from './question.ts';

/** Parts that are not meant to touch keep this far apart, mm. */
const APART = 0.1;
const CLOSED = 0.02;

const UP: Vec3 = [0, 0, 1];

/** Faces that must lie on each other, and the way the first comes off the second. */
const FACES: readonly (readonly [string, string])[] = [
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

/** The step's whole travel, as far as its settings use it: nearest, then farthest from the belt. */
const travel = (q: Question, step: Placement | undefined): [number, number] => {
  const ys = q.plan.settings.map(
    ({ id }) => q.place(id).find(({ name }) => name === 'step')?.frame.origin[1] ?? 0,
  );
  const y = step?.frame.origin[1] ?? 0;
  return [Math.min(...ys) - y, Math.max(...ys) - y];
};

const at = (y: number) => ({
  origin: [0, y, 0] as const,
  x: [1, 0, 0] as const,
  y: [0, 1, 0] as const,
  z: [0, 0, 1] as const,
});

/**
 * The fixture's own parts among each other: what is meant to touch is closed where faces meet,
 * and nothing else comes within a tenth of a millimetre, over the travel of the step.
 */
export const insideChecks = (q: Question): Result<CheckResult[]> => {
  const setting = q.plan.settings[0];
  const placements = setting ? q.place(setting.id) : [];
  const fixed = placements.filter(({ carrier }) => carrier !== 'blade');
  const [near, far] = travel(
    q,
    fixed.find(({ name }) => name === 'step'),
  );
  const still: Motion = [{ kind: 'glide', label: '', from: at(0), to: at(0) }];
  const gliding: Motion = [{ kind: 'glide', label: '', from: at(near), to: at(far) }];
  const moves = ({ carrier }: Placement): boolean => carrier === 'step';
  return chain(partMeshes(q.parts), (meshes) =>
    chain(
      all(fixed.map((p): Result<Body> => bodyOf(p.name, [p], meshes, moves(p) ? gliding : still))),
      (bodies) => {
        const has = (name: string): boolean => fixed.some((p) => p.name === name);
        const faces = FACES.filter(([a, b]) => has(a) && has(b));
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
