import {
  all,
  bodyOf,
  chain,
  checkPairs,
  createWorkspace,
  fitOf,
  keptFit,
  ok,
  pairResult,
  rangeCheck,
  partMeshes,
  shift,
  withShared,
  WORLD,
  type Assembly,
  type Body,
  type CheckResult,
  type Face,
  type Fit,
  type Motion,
  type PairRule,
  type Part,
  type PartMeshes,
  type Placement,
  type Result,
  type Sweep,
  type Workshop,
} from '../../../src/family/index.ts';
import { words } from './words.ts';

/** Parts that are not meant to touch keep this far apart, mm. */
const APART = 0.1;
const CLOSED = 0.02;

/** What pairs are asked for: faces closed; what touches otherwise is asked how it fits. */
const rulesOf = ({ placements, faces, up }: Assembly): PairRule[] => {
  const has = (name: string): boolean => placements.some((p) => p.name === name);
  const there = faces.filter(([a, b]) => has(a) && has(b));
  const isFace = (a: string, b: string): boolean =>
    there.some(([x, y]) => (x === a && y === b) || (x === b && y === a));
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
  const closed = there.map(([a, b]): PairRule => ({
    kind: 'touch',
    a,
    b,
    tolerance: CLOSED,
    apart: up,
  }));
  return [...touching, ...closed];
};

/** How every two parts that are said to touch stand to each other, faces and all others. */
const fitsOf = (q: Assembly, meshes: PartMeshes, bodies: readonly Body[]): Result<Fit[]> => {
  const work = createWorkspace();
  const standing = q.placements.flatMap((placement, i) => {
    const part = q.parts.find(({ id }) => id === placement.part);
    const [body, meshed] = [bodies[i], meshes.get(placement.part)];
    return part && body && meshed ? [{ part, placement, body, meshed }] : [];
  });
  return all(
    standing.flatMap((one) =>
      standing
        .filter(({ placement: { name } }) => one.placement.name < name)
        .filter(({ placement: { name } }) => one.placement.touches.includes(name))
        .map((other) =>
          one.body.motion === other.body.motion
            ? keptFit(q.workshop, one, other, CLOSED)
            : fitOf(work, one, other, CLOSED, q.workshop),
        ),
    ),
  );
};

const standChecks = (
  q: Assembly,
  meshes: PartMeshes,
  bodies: readonly Body[],
): Result<readonly CheckResult[]> =>
  chain(checkPairs(bodies, rulesOf(q), { otherwise: APART, within: APART }), (pairs) =>
    chain(fitsOf(q, meshes, bodies), (fits) => ok([...summary(q, pairs), ...fitResults(fits)])),
  );

/**
 * The fixture's own parts among each other: faces that must meet are closed, everything else that
 * is said to touch does no more than touch or is held in a hole made for it, and nothing else
 * comes within a tenth of a millimetre.
 */
export const insideChecks = (q: Assembly): Result<readonly CheckResult[]> =>
  chain(partMeshes(q.parts, q.workshop), (meshes) =>
    chain(
      all(
        q.placements.map((p): Result<Body> =>
          bodyOf(p.name, [p], meshes, q.motions?.get(p.carrier)),
        ),
      ),
      (bodies) => {
        const { parts, placements, faces, up, prefix, motions } = q;
        const ask = () => standChecks(q, meshes, bodies);
        const names = bodies.map((body) => q.workshop.nameOf(body));
        if (names.includes(undefined)) return ask();
        const moving = motions !== undefined;
        const key = JSON.stringify([names, parts, placements, faces, up, prefix, moving]);
        return q.workshop.assemblies(key, ask);
      },
    ),
  );

/** Every failed fit, and one line for all that fit. */
const fitResults = (fits: readonly Fit[]): CheckResult[] => {
  const crossing = fits.filter(({ state }) => state === 'crossing');
  const terms = { kind: 'contact', basis: words.basis.geometry, fix: words.fix.fit } as const;
  const wrong = crossing.map(({ a, b, bore }) =>
    rangeCheck({
      ...terms,
      id: `fit/${a}/${b}`,
      label: words.labels.fit(a, b),
      found: bore?.off ?? null,
      atMost: bore?.allowed ?? 0,
    }),
  );
  const good = crossing.length === 0 && fits.length > 0;
  const how = (state: Fit['state']): number => fits.filter((fit) => fit.state === state).length;
  return [
    ...wrong,
    {
      ...terms,
      id: 'fit/all',
      label: words.labels.fits,
      passed: good,
      unit: 'mm',
      found: good ? CLOSED : null,
      atMost: CLOSED,
      message: words.fitMessage(how('apart'), how('seated'), how('held'), crossing.length),
      fix: good ? '' : words.fix.fit,
    },
  ];
};

type Pair = Parameters<typeof pairResult>[0];

const resultOf = ({ prefix }: Assembly, pair: Pair): CheckResult => {
  const contact = pair.rule.kind === 'touch';
  const result = pairResult(pair, {
    id: `${contact ? prefix : 'inside'}/${pair.a}/${pair.b}`,
    label: contact ? words.labels.contact(pair.a, pair.b) : words.labels.pair(pair.a, pair.b),
    basis: words.basis.geometry,
    fix: contact ? words.fix.contactOpen : words.fix.inside,
    pose: (setting) => (setting === '' ? undefined : { setting }),
  });
  return withShared(result, pair.shared);
};

/** Every contact, every failure, and one line for all the pairs that keep apart. */
const summary = (q: Assembly, pairs: readonly Pair[]): CheckResult[] => {
  const of = (kind: PairRule['kind']): CheckResult[] =>
    pairs.filter(({ rule }) => rule.kind === kind).map((pair) => resultOf(q, pair));
  const apart = of('clear');
  const failed = apart.filter(({ passed }) => !passed);
  const good = failed.length === 0 && apart.length > 0;
  const count = apart.length - failed.length;
  return [
    ...of('touch'),
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
      message: words.insideMessage(count, failed.length, APART, q.motions !== undefined),
      fix: good ? '' : words.fix.inside,
    },
  ];
};

/** Faces of base, guide, feed and push block that must lie on each other. */
const RIG_FACES: readonly Face[] = [
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

/** What stands where at every setting. */
export interface Assembled {
  readonly workshop: Workshop;
  readonly parts: readonly Part[];
  readonly place: (setting: string) => readonly Placement[];
  readonly plan: { readonly settings: readonly { readonly id: string }[] };
}

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

/** A base with nose and slide, which stand elsewhere along y at every setting. */
export const rigAssembly = (q: Assembled, more: readonly Face[] = []): Assembly => {
  const setting = q.plan.settings[0];
  const placements = setting
    ? q.place(setting.id).filter(({ carrier }) => carrier !== 'blade')
    : [];
  return {
    parts: q.parts,
    workshop: q.workshop,
    placements,
    motions: motionsOf(q, placements),
    faces: [...RIG_FACES, ...more],
    up: [0, 0, 1],
    prefix: 'contact',
  };
};
