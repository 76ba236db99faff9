import {
  all,
  bodyOf,
  chain,
  checkPairs,
  createWorkspace,
  fail,
  fitOf,
  keptFit,
  keptPair,
  ok,
  pairResult,
  rangeCheck,
  partMeshes,
  shift,
  withShared,
  WORLD,
  type Assembly,
  type Body,
  type CarriedPart,
  type CheckResult,
  type Face,
  type Fit,
  type Motion,
  type PairCheck,
  type PairRule,
  type Part,
  type PartMeshes,
  type Placement,
  type Result,
  type Standing,
  type Start,
  type Sweep,
  type Workshop,
} from '../../../src/family/index.ts';
import { later } from '../later.ts';
import { words } from './words.ts';

/** Parts that are not meant to touch keep this far apart, mm. */
const APART = 0.1;
const CLOSED = 0.02;

type Rule = Exclude<PairRule, { kind: 'ignore' }>;

/**
 * What two placements are asked for: a face is closed, all else keeps apart. None where they touch
 * otherwise: they are asked how they fit.
 */
const ruleFor = ({ faces, up }: Assembly, one: Placement, other: Placement): Rule | undefined => {
  const [a, b] = [one.name, other.name];
  const face = faces.find(([x, y]) => (x === a && y === b) || (x === b && y === a));
  if (face) return { kind: 'touch', a: face[0], b: face[1], tolerance: CLOSED, apart: up };
  const [first, second] = a < b ? [one, other] : [other, one];
  if (first.touches.includes(second.name)) return undefined;
  return { kind: 'clear', a, b, gap: APART };
};

/** A placement with what is made of it; its body where it stands is made when it is asked for. */
interface Stood extends CarriedPart {
  readonly motion: Motion | undefined;
  readonly body: () => Result<Body>;
}

const stoodOf = (q: Assembly, meshes: PartMeshes): Result<Stood[]> =>
  all(
    q.placements.map((placement): Result<Stood> => {
      const part = q.parts.find(({ id }) => id === placement.part);
      const meshed = meshes.get(placement.part);
      const motion = q.motions?.get(placement.carrier);
      const body = later(() => bodyOf(placement.name, [placement], meshes, motion));
      return part && meshed
        ? ok({ part, placement, meshed, motion, body })
        : chain(body(), () => fail());
    }),
  );

/** Where what carries a placement stands at first. */
const startOf = ({ motion }: Stood): Start => {
  const first = motion?.[0];
  return first?.kind === 'still' ? first : { label: '', pose: WORLD };
};

/** Every two placements that are not asked how they fit, against what they are asked for. */
const pairsOf = (q: Assembly, stood: readonly Stood[]): Result<PairCheck[]> => {
  const work = createWorkspace();
  const ask = (one: Stood, other: Stood, rule: Rule): Result<PairCheck[]> => {
    if (one.motion === other.motion) {
      const kept = keptPair(q.workshop, work, [one, other], rule, APART, startOf(one));
      return chain(kept, (pair) => ok([pair]));
    }
    return chain(all([one.body(), other.body()]), (bodies) =>
      checkPairs(bodies, [rule], { otherwise: APART, within: APART, work }),
    );
  };
  const found = stood.flatMap((one, i) =>
    stood.slice(i + 1).flatMap((other): Result<PairCheck[]>[] => {
      const rule = ruleFor(q, one.placement, other.placement);
      if (rule === undefined) return [];
      return [rule.a === one.placement.name ? ask(one, other, rule) : ask(other, one, rule)];
    }),
  );
  return chain(all(found), (pairs) => ok(pairs.flat()));
};

/** How every two parts that are said to touch stand to each other, faces and all others. */
const fitsOf = (q: Assembly, stood: readonly Stood[]): Result<Fit[]> => {
  const work = createWorkspace();
  const standing = (one: Stood): Result<Standing> =>
    chain(one.body(), (body) => {
      const { part, placement } = one;
      return ok({ part, placement, body, solid: placement.frame });
    });
  const fit = (one: Stood, other: Stood): Result<Fit> =>
    one.motion === other.motion
      ? keptFit(q.workshop, one, other, CLOSED)
      : chain(standing(one), (a) =>
          chain(standing(other), (b) => fitOf(work, a, b, CLOSED, q.workshop)),
        );
  return all(
    stood.flatMap((one) =>
      stood
        .filter(({ placement: { name } }) => one.placement.name < name)
        .filter(({ placement: { name } }) => one.placement.touches.includes(name))
        .map((other) => fit(one, other)),
    ),
  );
};

const standChecks = (q: Assembly, meshes: PartMeshes): Result<readonly CheckResult[]> =>
  chain(stoodOf(q, meshes), (stood) =>
    chain(pairsOf(q, stood), (pairs) =>
      chain(fitsOf(q, stood), (fits) => ok([...summary(q, pairs), ...fitResults(fits)])),
    ),
  );

/**
 * The fixture's own parts among each other: faces that must meet are closed, everything else that
 * is said to touch does no more than touch or is held in a hole made for it, and nothing else
 * comes within a tenth of a millimetre.
 */
export const insideChecks = (q: Assembly): Result<readonly CheckResult[]> =>
  chain(partMeshes(q.parts, q.workshop), (meshes) => {
    const { parts, placements, faces, up, prefix, motions } = q;
    const ask = () => standChecks(q, meshes);
    const ways = [...(motions ?? [])];
    // A course is known by running it alone.
    if (ways.some(([, motion]) => motion.some(({ kind }) => kind === 'course'))) return ask();
    const standing = JSON.stringify([placements, faces, up, prefix, motions && ways]);
    // The parts of a fixture stand in as many assemblies as it has settings.
    return q.workshop.assemblies(`${q.workshop.contentOf(parts)} ${standing}`, ask);
  });

/** Every failed fit, and one line for all that fit. */
const fitResults = (fits: readonly Fit[]): CheckResult[] => {
  const crossing = fits.filter(({ state }) => state === 'crossing');
  const terms = { kind: 'contact', basis: words.basis.geometry, fix: words.fix.fit } as const;
  const wrong = crossing.map(({ a, b, bore, shared }) => {
    const failed = rangeCheck({
      ...terms,
      id: `fit/${a}/${b}`,
      label: words.labels.fit(a, b),
      found: bore?.off ?? null,
      atMost: bore?.allowed ?? 0,
    });
    return withShared(failed, shared);
  });
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
  const of = (kind: PairRule['kind']): Pair[] => pairs.filter(({ rule }) => rule.kind === kind);
  const apart = of('clear');
  const failed = apart.filter(({ pass }) => !pass).map((pair) => resultOf(q, pair));
  const good = failed.length === 0 && apart.length > 0;
  const count = apart.length - failed.length;
  return [
    ...of('touch').map((pair) => resultOf(q, pair)),
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
