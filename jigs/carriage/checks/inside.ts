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
  type PairRule,
  type Result,
  type Vec3,
} from '../../../src/family/index.ts';
import { placed } from '../place/stand.ts';
import { words, type Question } from './question.ts';

/** Parts that are not meant to touch keep this far apart, mm. */
const APART = 0.1;
const CLOSED = 0.02;

/** Faces that must lie on each other. */
const FACES: readonly (readonly [string, string])[] = [
  ['fence', 'base'],
  ['upright', 'sole'],
  ['upright-angle', 'sole'],
  ['sole', 'foot-strip'],
  ['foot-strip', 'foot-bar'],
  ['sole', 'push-block'],
  ['gusset-1', 'sole'],
  ['gusset-2', 'sole'],
  ['gusset-3', 'sole'],
  ['gusset-4', 'sole'],
];

/**
 * The fixture's own parts among each other at the first setting: what is meant to touch is closed
 * where faces meet, and nothing else comes within a tenth of a millimetre.
 */
export const insideChecks = (q: Question): Result<CheckResult[]> => {
  const [setting] = q.c.plan.settings;
  const placements = setting ? placed(q.c, q.items, setting) : [];
  const up: Vec3 = placements.find(({ name }) => name === 'sole')?.frame.z ?? [0, 0, 1];
  return chain(partMeshes(q.parts), (meshes) =>
    chain(all(placements.map((p): Result<Body> => bodyOf(p.name, [p], meshes))), (bodies) => {
      const has = (name: string): boolean => placements.some((p) => p.name === name);
      const faces = FACES.filter(([a, b]) => has(a) && has(b));
      const isFace = (a: string, b: string): boolean =>
        faces.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
      const touching = placements.flatMap((p) =>
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
        apart: up,
      }));
      return chain(
        checkPairs(bodies, [...touching, ...closed], { otherwise: APART, within: APART }),
        (pairs) => ok(summary(pairs)),
      );
    }),
  );
};

type Pair = Parameters<typeof pairResult>[0];

const resultOf = (pair: Pair): CheckResult => {
  const contact = pair.rule.kind === 'touch';
  return pairResult(pair, {
    id: `${contact ? 'joint' : 'inside'}/${pair.a}/${pair.b}`,
    label: contact ? words.labels.contact(pair.a, pair.b) : words.labels.pair(pair.a, pair.b),
    basis: words.basis.geometry,
    fix: contact ? words.fix.contactOpen : words.fix.inside,
  });
};

/** Every joint, every failure, and one line for all the pairs that keep apart. */
const summary = (pairs: readonly Pair[]): CheckResult[] => {
  const joints = pairs.filter(({ rule }) => rule.kind === 'touch').map(resultOf);
  const others = pairs.filter(({ rule }) => rule.kind === 'clear').map(resultOf);
  const failed = others.filter(({ passed }) => !passed);
  const good = failed.length === 0 && others.length > 0;
  return [
    ...joints,
    ...failed,
    {
      id: 'inside/all',
      label: words.labels.inside,
      kind: 'clearance',
      passed: good,
      unit: 'mm',
      found: good ? APART : null,
      atLeast: APART,
      basis: words.basis.geometry,
      message: words.insideMessage(others.length - failed.length, failed.length, APART),
      fix: good ? '' : words.fix.inside,
    },
  ];
};
