import { localise, place, type Frame } from '../geometry/frame.ts';
import type { Loop } from '../geometry/loop.ts';
import { cross3, length3, sub3, type Vec3 } from '../geometry/vector.ts';
import type { CrossHole, Layer, Part, Placement } from '../model/part.ts';

/** A round hole of a part, whatever made it: a line in part coordinates. */
interface Bore {
  readonly at: Vec3;
  readonly along: Vec3;
  readonly size: number;
  /** Tapped, or a hole that the layers of the part do not show. */
  readonly threaded: boolean;
  readonly drawn: boolean;
}

/** A round bar that goes into holes: the local z axis of its part, of this diameter, mm. */
export interface Shank {
  readonly diameter: number;
  /** Layers of the head, where it has one. */
  readonly head: readonly Layer[];
}

/** Reamed holes are drilled under the size of their pin by at most this, mm. */
const REAMED = 0.35;
/** How far a thread or a pressed pin may stand off the middle of its hole, mm. */
const CENTRED = 0.05;
/** Axes that differ by less than this in direction count as parallel. */
const PARALLEL = 1e-6;

const diameterOf = (loop: Loop): number | undefined =>
  loop.kind === 'circle' ? 2 * loop.radius : undefined;

/**
 * The shank of a screw, pin, rod or round bar: what lies below its head (z < 0), or all of it
 * where it has none. Undefined for everything else.
 */
export const shankOf = ({ layers }: Part): Shank | undefined => {
  const below = layers.filter(({ to }) => to <= 0);
  const own = below.length > 0 ? below : layers;
  if (own.some(({ profile }) => profile.holes.length > 0)) return undefined;
  const longest = own.reduce<Layer | undefined>(
    (best, layer) => (best && best.to - best.from >= layer.to - layer.from ? best : layer),
    undefined,
  );
  const diameter = longest && diameterOf(longest.profile.outer);
  return diameter === undefined
    ? undefined
    : { diameter, head: layers.filter((layer) => !own.includes(layer)) };
};

const crossBore = ({ face, at, size, thread }: CrossHole): Bore => ({
  at: face === 'x' ? [0, at[0], at[1]] : [at[0], 0, at[1]],
  along: face === 'x' ? [1, 0, 0] : [0, 1, 0],
  size,
  threaded: thread !== undefined,
  drawn: false,
});

const boresOf = (part: Part): Bore[] => {
  const upright = (x: number, y: number, size: number, threaded: boolean): Bore => ({
    at: [x, y, 0],
    along: [0, 0, 1],
    size,
    threaded,
    drawn: true,
  });
  if (part.kind === 'hardware') {
    // Nuts and washers: their holes are in the layers, a nut's of the thread's own diameter.
    return part.layers.flatMap(({ profile }) =>
      profile.holes.flatMap((hole) =>
        hole.kind === 'circle'
          ? [upright(hole.centre[0], hole.centre[1], 2 * hole.radius, true)]
          : [],
      ),
    );
  }
  const cross = part.kind === 'stock' ? part.crossHoles.map(crossBore) : [];
  const round = part.holes.filter(({ slotLength }) => slotLength === undefined);
  return [
    ...round.map(({ at, size, thread }) => upright(at[0], at[1], size, thread !== undefined)),
    ...cross,
  ];
};

/** How far a shank may stand off the middle of a bore, mm; undefined where it does not go in. */
const allowedIn = ({ size, threaded, drawn }: Bore, diameter: number): number | undefined => {
  if (size < diameter - 1e-9) return threaded || diameter - size <= REAMED ? CENTRED : undefined;
  if (!drawn) return Math.max((size - diameter) / 2, CENTRED);
  // A clearance hole is seen in the layers: what still crosses it does not fit.
  return threaded && size - diameter < 1e-6 ? CENTRED : undefined;
};

/** Where the axis of a shank runs in a part's own coordinates. */
const axisIn = (part: Frame, shank: Frame): { at: Vec3; along: Vec3 } => {
  const at = localise(part, shank.origin);
  return { at, along: sub3(localise(part, place(shank, [0, 0, 1])), at) };
};

/** How a shank stands to the holes of a part. */
export interface InBore {
  /** Off the middle of the nearest hole it can be held by, and how far it may be, mm. */
  readonly off: number;
  readonly allowed: number;
}

/**
 * The hole of `other` that holds a shank which their solids show crossing: a thread, a reamed
 * pin's, or one that the layers leave out (drilled across a bar). Undefined where there is none.
 */
export const inBore = (
  shank: Shank,
  standing: Placement,
  part: Part,
  other: Placement,
): InBore | undefined => {
  const axis = axisIn(other.frame, standing.frame);
  return boresOf(part)
    .flatMap((bore): InBore[] => {
      const allowed = allowedIn(bore, shank.diameter);
      if (allowed === undefined || length3(cross3(axis.along, bore.along)) > PARALLEL) return [];
      return [{ off: length3(cross3(sub3(axis.at, bore.at), bore.along)), allowed }];
    })
    .reduce<InBore | undefined>(
      (best, one) => (best && best.off - best.allowed <= one.off - one.allowed ? best : one),
      undefined,
    );
};
