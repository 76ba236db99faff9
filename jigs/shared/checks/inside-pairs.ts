import {
  all,
  blockOf,
  blockOver,
  blockRoom,
  bodyOf,
  chain,
  CHECK_CHORD,
  checkPair,
  createWorkspace,
  fail,
  fitOf,
  keptFit,
  keptPair,
  ok,
  WORLD,
  type Assembly,
  type Block,
  type Body,
  type CarriedPart,
  type Face,
  type Fit,
  type Motion,
  type PairCheck,
  type PairRule,
  type PartForms,
  type Placement,
  type Result,
  type Standing,
  type Start,
  type Vec3,
} from '../../../src/family/index.ts';
import { later } from '../later.ts';

/** Parts that are not meant to touch keep this far apart, mm. */
export const APART = 0.1;
/** Faces that must meet do so within this, mm. */
export const CLOSED = 0.02;

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
const ruleFor = (
  faces: Faces,
  up: Vec3,
  one: Placement,
  other: Placement,
): PairRule | undefined => {
  const [a, b] = [one.name, other.name];
  const face = faces.get(a)?.get(b);
  if (face) return { kind: 'touch', a: face[0], b: face[1], tolerance: CLOSED, apart: up };
  const [first, second] = a < b ? [one, other] : [other, one];
  if (first.touches.includes(second.name)) return undefined;
  return { kind: 'clear', a, b, gap: APART };
};

/** A placement with what is made of it; its body where it stands is made when it is asked for. */
export interface Stood extends CarriedPart {
  readonly motion: Motion | undefined;
  readonly body: () => Result<Body>;
  /** The upright box around it in what carries it, and around all its places in the assembly. */
  readonly block: Block | undefined;
  readonly over: Block | undefined;
}

export const stoodOf = (q: Assembly, forms: PartForms): Result<Stood[]> => {
  const parts = new Map(q.parts.map((part) => [part.id, part]));
  return all(
    q.placements.map((placement): Result<Stood> => {
      const part = parts.get(placement.part);
      const formed = forms.get(placement.part);
      const motion = q.motions?.get(placement.carrier);
      const body = later(() => bodyOf(placement.name, [placement], forms, motion));
      if (!part || !formed) return chain(body(), () => fail());
      const one = { part, placement, formed };
      const block = blockOf(one);
      const over = block && motion ? blockOver(block, motion) : block;
      return ok({ ...one, motion, body, block, over });
    }),
  );
};

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
export interface Pairs {
  readonly near: readonly PairCheck[];
  /** So many more keep apart by the boxes around them. */
  readonly far: number;
}

/** Every two placements that are not asked how they fit, against what they are asked for. */
export const pairsOf = (q: Assembly, stood: readonly Stood[]): Result<Pairs> => {
  const work = createWorkspace(q.workshop.room);
  const faces = facesBy(q.faces);
  const ask = (one: Stood, other: Stood, rule: PairRule): Result<PairCheck> =>
    one.motion === other.motion
      ? ok(keptPair(q.workshop, work, [one, other], rule, APART, startOf(one)))
      : chain(one.body(), (a) =>
          chain(other.body(), (b) => ok(checkPair(a, b, rule, { within: APART, work }))),
        );
  const found: Result<PairCheck>[] = [];
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
  return chain(all(found), (near) => ok({ near, far }));
};

/** How every two parts that are said to touch stand to each other, faces and all others. */
export const fitsOf = (q: Assembly, stood: readonly Stood[]): Result<Fit[]> => {
  const work = createWorkspace(q.workshop.room);
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
