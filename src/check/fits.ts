import { chain, ok, type Result } from '../core/result.ts';
import { compose, shift, turn, type Frame } from '../geometry/frame.ts';
import { dot3, scale3, type Vec3 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { standBeside, type Stack } from './beside.ts';
import { inBore, shankOf, type InBore, type Shank } from './bores.ts';
import {
  clearance,
  meets,
  overlapVolume,
  poseOfBody,
  shiftBody,
  stands,
  type Body,
  type Workspace,
} from './distance/index.ts';
import type { Fit } from './fit.ts';
import type { Workshop } from './workshop.ts';

/** A placed part with its solid, standing as the assembly stands. */
export interface Standing {
  readonly part: Part;
  /** Where it stands in the assembly. */
  readonly placement: Placement;
  readonly body: Body;
  /** Where its solid stands in the coordinates of its body, which a motion may carry. */
  readonly solid: Frame;
}

/** The volume two bodies share at the configuration in which they are found to meet, mm3. */
const sharedBy = (work: Workspace, a: Body, b: Body): number | undefined => {
  const met = clearance(a, b, { within: 0, work });
  if (!met.ok || met.value.state === 'beyond') return undefined;
  const { poseA, poseB } = met.value.at;
  return overlapVolume(a, b, { a: poseA, b: poseB });
};

const SIGNS = [0, 1, -1] as const;

/**
 * The ways in which a part comes off another: along its own axes where one face meets another,
 * aslant where it lies in a corner. Along single axes first.
 */
const WAYS: readonly Vec3[] = SIGNS.flatMap((x) =>
  SIGNS.flatMap((y) => SIGNS.map((z): Vec3 => [x, y, z])),
)
  .filter((way) => way.some((k) => k !== 0))
  .sort((a, b) => dot3(a, a) - dot3(b, b));

/** Both bodies; at rest where one motion carries both, for then they never move past each other. */
const together = (a: Body, b: Body): readonly [Body, Body] => {
  const still = ({ name, solids, chordError }: Body): Body => ({ name, solids, chordError });
  return a.motion === b.motion ? [still(a), still(b)] : [a, b];
};

/** What moves not at all, as layers where they stand. */
const stackOf = ({ part, body, solid }: Standing): Stack | undefined =>
  stands(body.motion)
    ? { layers: part.layers, frame: compose(poseOfBody(body, 0, 0), solid) }
    : undefined;

/** Whether outlines alone tell that two do not meet when the first is moved. */
const areBeside = (one: Standing, other: Standing, by: Vec3 = [0, 0, 0]): boolean => {
  const [mine, theirs] = [stackOf(one), stackOf(other)];
  if (mine === undefined || theirs === undefined) return false;
  return standBeside({ ...mine, frame: shift(mine.frame, by) }, theirs);
};

/** Whether one comes free of another when moved by the tolerance along axes of theirs. */
const comesFree = (
  work: Workspace,
  one: Standing,
  other: Standing,
  frames: readonly Frame[],
  tolerance: number,
): Result<boolean> => {
  for (const way of WAYS.flatMap((local) => frames.map((f) => turn(f, local)))) {
    const by = scale3(way, tolerance);
    if (areBeside(one, other, by)) return ok(true);
    const moved = meets(work, shiftBody(one.body, by), other.body, way);
    if (!moved.ok) return moved;
    if (!moved.value) return ok(true);
  }
  return ok(false);
};

/** The head of a screw alone, where it stands and as it moves with it. */
const headOf = (
  { part, placement, body, solid }: Standing,
  { head }: Shank,
  { formed }: Pick<Workshop, 'formed'>,
): Result<Standing> =>
  chain(formed({ layers: head }), ({ at }) =>
    ok({
      part: { ...part, layers: head },
      placement,
      body: { ...body, solids: [at(solid)] },
      solid,
    }),
  );

/** One in a hole of the other: centred in a thread or a reamed hole, its head not sunk in. */
const heldIn = (
  work: Workspace,
  one: Standing,
  other: Standing,
  frames: readonly Frame[],
  tolerance: number,
  workshop: Pick<Workshop, 'formed'>,
): Result<{ held: boolean; bore?: InBore }> => {
  const shank = shankOf(one.part);
  const bore = shank && inBore(shank, one.placement, other.part, other.placement);
  if (!shank || !bore) return ok({ held: false });
  if (bore.off > bore.allowed) return ok({ held: false, bore });
  if (shank.head.length === 0) return ok({ held: true, bore });
  return chain(headOf(one, shank, workshop), (head) =>
    chain(meets(work, head.body, other.body), (sunk) =>
      sunk
        ? chain(comesFree(work, head, other, frames, tolerance), (held) => ok({ held, bore }))
        : ok({ held: true, bore }),
    ),
  );
};

/** The frames of two parts, or the first alone where their axes lie along each other. */
const framesOf = (one: Frame, other: Frame): Frame[] => {
  const along = (a: Vec3, b: Vec3): boolean => Math.abs(Math.abs(dot3(a, b)) - 1) < 1e-9;
  const axes = [one.x, one.y, one.z];
  const same = [other.x, other.y].every((b) => axes.some((a) => along(a, b)));
  return same ? [one] : [one, other];
};

/**
 * How two parts that are said to touch stand to each other at every configuration of their
 * motions. Nothing is taken on trust: faces that meet must come free when moved by `tolerance`
 * (mm), shanks must pass their clearance holes without meeting them, and what crosses in the
 * solids must be centred in a thread, a reamed hole or a cross hole of the other part.
 */
export const fitOf = (
  work: Workspace,
  first: Standing,
  second: Standing,
  tolerance: number,
  workshop: Pick<Workshop, 'formed'>,
): Result<Fit> => {
  const [bodyA, bodyB] = together(first.body, second.body);
  const [one, other] = [
    { ...first, body: bodyA },
    { ...second, body: bodyB },
  ];
  const [a, b] = [one.placement.name, other.placement.name];
  const frames = framesOf(one.placement.frame, other.placement.frame);
  const met = areBeside(one, other) ? ok(false) : meets(work, one.body, other.body);
  return chain(met, (crossing): Result<Fit> => {
    if (!crossing) return ok({ a, b, state: 'apart' });
    return chain(heldIn(work, one, other, frames, tolerance, workshop), (there): Result<Fit> => {
      const either = there.held ? ok(there) : heldIn(work, other, one, frames, tolerance, workshop);
      return chain(either, ({ held, bore }): Result<Fit> => {
        const nearest = bore ?? there.bore;
        if (held) return ok({ a, b, state: 'held', ...(nearest ? { bore: nearest } : {}) });
        return chain(comesFree(work, one, other, frames, tolerance), (free) =>
          ok({
            a,
            b,
            state: free ? 'seated' : 'crossing',
            ...(nearest && !free ? { bore: nearest } : {}),
            ...(free ? {} : { shared: () => sharedBy(work, one.body, other.body) }),
          }),
        );
      });
    });
  });
};
