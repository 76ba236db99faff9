import {
  all,
  blockOf,
  blockOver,
  blockRoom,
  bodyOf,
  chain,
  CHECK_CHORD,
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
  type Block,
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
  type Vec3,
  type Workshop,
} from '../../../src/family/index.ts';
import { later } from '../later.ts';
import { words } from './words.ts';

/** Parts that are not meant to touch keep this far apart, mm. */
const APART = 0.1;
const CLOSED = 0.02;

type Rule = Exclude<PairRule, { kind: 'ignore' }>;

/** Which faces must meet, by the names of both placements. */
type Faces = ReadonlyMap<string, ReadonlyMap<string, Face>>;

const facesBy = (faces: readonly Face[]): Faces => {
  const found = new Map<string, Map<string, Face>>();
  for (const face of faces) {
    for (const [a, b] of [face, [face[1], face[0]] as const]) {
      found.set(a, (found.get(a) ?? new Map<string, Face>()).set(b, face));
    }
  }
  return found;
};

/**
 * What two placements are asked for: a face is closed, all else keeps apart. None where they touch
 * otherwise: they are asked how they fit.
 */
const ruleFor = (faces: Faces, up: Vec3, one: Placement, other: Placement): Rule | undefined => {
  const [a, b] = [one.name, other.name];
  const face = faces.get(a)?.get(b);
  if (face) return { kind: 'touch', a: face[0], b: face[1], tolerance: CLOSED, apart: up };
  const [first, second] = a < b ? [one, other] : [other, one];
  if (first.touches.includes(second.name)) return undefined;
  return { kind: 'clear', a, b, gap: APART };
};

/** A placement with what is made of it; its body where it stands is made when it is asked for. */
interface Stood extends CarriedPart {
  readonly motion: Motion | undefined;
  readonly body: () => Result<Body>;
  /** The upright box around it in what carries it, and around all its places in the assembly. */
  readonly block: Block | undefined;
  readonly over: Block | undefined;
}

const stoodOf = (q: Assembly, meshes: PartMeshes): Result<Stood[]> =>
  all(
    q.placements.map((placement): Result<Stood> => {
      const part = q.parts.find(({ id }) => id === placement.part);
      const meshed = meshes.get(placement.part);
      const motion = q.motions?.get(placement.carrier);
      const body = later(() => bodyOf(placement.name, [placement], meshes, motion));
      if (!part || !meshed) return chain(body(), () => fail());
      const one = { part, placement, meshed };
      return chain(blockOf(one), (block) => {
        const over = block && motion ? blockOver(block, motion) : block;
        return ok({ ...one, motion, body, block, over });
      });
    }),
  );

/** Where what carries a placement stands at first. */
const startOf = ({ motion }: Stood): Start => {
  const first = motion?.[0];
  return first?.kind === 'still' ? first : { label: '', pose: WORLD };
};

/** Whether upright boxes alone tell that two placements keep apart wherever they are carried. */
const areFar = (one: Stood, other: Stood): boolean => {
  const key = one.motion === other.motion ? 'block' : 'over';
  const [a, b] = [one[key], other[key]];
  return a !== undefined && b !== undefined && blockRoom(a, b) >= APART + 2 * CHECK_CHORD;
};

/** What was found of every two placements that are not asked how they fit. */
interface Pairs {
  readonly near: readonly PairCheck[];
  /** So many more keep apart by the boxes around them. */
  readonly far: number;
}

/** Every two placements that are not asked how they fit, against what they are asked for. */
const pairsOf = (q: Assembly, stood: readonly Stood[]): Result<Pairs> => {
  const work = createWorkspace();
  const faces = facesBy(q.faces);
  const ask = (one: Stood, other: Stood, rule: Rule): Result<PairCheck[]> => {
    if (one.motion === other.motion) {
      const kept = keptPair(q.workshop, work, [one, other], rule, APART, startOf(one));
      return chain(kept, (pair) => ok([pair]));
    }
    return chain(all([one.body(), other.body()]), (bodies) =>
      checkPairs(bodies, [rule], { otherwise: APART, within: APART, work }),
    );
  };
  const found: Result<PairCheck[]>[] = [];
  let far = 0;
  stood.forEach((one, i) => {
    for (let j = i + 1; j < stood.length; j++) {
      const other = stood[j] ?? one;
      const rule = ruleFor(faces, q.up, one.placement, other.placement);
      if (rule === undefined) continue;
      if (rule.kind === 'clear' && areFar(one, other)) far += 1;
      else
        found.push(rule.a === one.placement.name ? ask(one, other, rule) : ask(other, one, rule));
    }
  });
  return chain(all(found), (near) => ok({ near: near.flat(), far }));
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
      ? keptFit(q.workshop, work, one, other, CLOSED)
      : chain(standing(one), (a) =>
          chain(standing(other), (b) => fitOf(work, a, b, CLOSED, q.workshop)),
        );
  const placeOf = new Map(stood.map(({ placement: { name } }, i) => [name, i]));
  return all(
    stood.flatMap((one) => {
      const { name, touches } = one.placement;
      const others = touches.flatMap((other) => (name < other ? (placeOf.get(other) ?? []) : []));
      return [...new Set(others)]
        .sort((a, b) => a - b)
        .flatMap((i) => stood[i] ?? [])
        .map((other) => fit(one, other));
    }),
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
const summary = (q: Assembly, { near, far }: Pairs): CheckResult[] => {
  const of = (kind: PairRule['kind']): Pair[] => near.filter(({ rule }) => rule.kind === kind);
  const apart = of('clear');
  const failed = apart.filter(({ pass }) => !pass).map((pair) => resultOf(q, pair));
  const count = far + apart.length - failed.length;
  const good = failed.length === 0 && count > 0;
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
