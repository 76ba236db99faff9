import { problem } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { asin, cos, sin } from '../core/trigonometry.ts';
import { degrees, radians } from '../core/units.ts';
import { distance2, type Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { onRound, wrapRound, type Support, type Wrap } from './round.ts';
import type { Abrasive, Backing, Grinder } from './schema.ts';

/** A straight stretch, (y, z) mm. */
export interface BeltRun {
  readonly kind: 'run';
  readonly from: Vec2;
  readonly to: Vec2;
  /** Whether the platen backs it or nothing does. */
  readonly over: 'platen' | 'span';
}

/** A stretch round something, anticlockwise from `start` to `end` (degrees, end > start). */
export interface BeltArc {
  readonly kind: 'arc';
  readonly centre: Vec2;
  readonly radius: number;
  readonly start: number;
  readonly end: number;
  /** The wheel's id, or the part of the platen. */
  readonly over: string;
}

/**
 * The closed line of a tight belt in the (y, z) plane of the grinder frame, anticlockwise: up the
 * front, over the top, down the back. Where the belt runs downwards at the front it is travelled
 * the other way.
 */
export interface BeltPath {
  readonly pieces: readonly (BeltRun | BeltArc)[];
  /** Length of the line, mm. */
  readonly length: number;
}

/** Names of the platen's supports among the wheels' ids; a wheel id cannot hold a colon. */
const LOWER = 'platen:bottom';
const FACE = 'platen:face';
const UPPER = 'platen:top';

/** Distance from the bare platen face to the back of the belt, square to the face, mm. */
export const supportDepth = ({ platen }: Grinder, backing: Backing): number =>
  platen.kind === 'none' ? 0 : platen.liner + backing.thickness;

/** Distance from the bare platen face to the abrasive face, square to the face, mm. */
export const faceDepth = (grinder: Grinder, belt: Abrasive, backing: Backing): number =>
  supportDepth(grinder, backing) + belt.thickness;

/**
 * Radius (mm) of the convex face under the belt, seen along the stroke; none when it is flat.
 * Liner and an even backing add their thickness to a convex platen; a radiused backing brings
 * its own radius.
 */
export const supportRadius = ({ platen }: Grinder, backing: Backing): number | undefined => {
  if (backing.kind === 'radius') return backing.radius;
  return platen.kind === 'radius' ? platen.radius + platen.liner + backing.thickness : undefined;
};

const platenSupports = (grinder: Grinder, backing: Backing): Support[] => {
  const { platen } = grinder;
  if (platen.kind === 'none') return [];
  const { bottom, top, edgeRadius: r } = platen;
  const depth = supportDepth(grinder, backing);
  const radius = supportRadius(grinder, backing);
  if (radius === undefined)
    return [
      { id: LOWER, centre: [depth - r, bottom + r], radius: r },
      { id: UPPER, centre: [depth - r, top - r], radius: r },
    ];
  // The ends touch the convex face from within at +/- half, so that belt and face stay tangent.
  const centre: Vec2 = [depth - radius, (bottom + top) / 2];
  const half = degrees(asin(((top - bottom) / 2 - r) / (radius - r)));
  const end = (id: string, angle: number): Support => ({
    id,
    centre: onRound({ id, centre, radius: radius - r }, angle),
    radius: r,
  });
  return [
    end(LOWER, -half),
    { id: FACE, centre, radius, only: { from: -half, to: half } },
    end(UPPER, half),
  ];
};

/** Turns a point of the unleaned grinder about the line y = 0, z = 0 by the lean, degrees. */
export const leaned = ([y, z]: Vec2, lean: number): Vec2 => {
  const [c, s] = [cos(radians(lean)), sin(radians(lean))];
  return [c * y - s * z, s * y + c * z];
};

const pieceOf = (wrap: Wrap, outset: number, lean: number): BeltArc => ({
  kind: 'arc',
  centre: leaned(wrap.support.centre, lean),
  radius: wrap.support.radius + outset,
  start: wrap.start + lean,
  end: wrap.end + lean,
  over: wrap.support.id,
});

const arcLength = (arc: BeltArc): number => arc.radius * radians(arc.end - arc.start);

/** Shortest stretch that is kept as a piece, mm. */
const NOTHING = 1e-9;

/**
 * The line of the tight belt over wheels, platen and backing, grown outwards by `outset` mm: 0 is
 * the back of the belt, the belt's thickness its abrasive face, more the room it needs. Exact:
 * the convex hull of the wheels' and platen's circles, with every arc grown by the outset. Fails
 * when the belt does not touch the platen.
 */
export const beltPath = (grinder: Grinder, backing: Backing, outset = 0): Result<BeltPath> => {
  const wheels = grinder.wheels.map(({ id, centre, diameter }) => ({
    id,
    centre,
    radius: diameter / 2,
  }));
  const wraps = wrapRound([...wheels, ...platenSupports(grinder, backing)]);
  const touched = new Set(wraps.map((wrap) => wrap.support.id));
  const backed = touched.has(FACE) || (touched.has(LOWER) && touched.has(UPPER));
  if (grinder.platen.kind !== 'none' && !backed)
    return fail(problem('platen-not-touched', 'platen', text.grinder.rules.platenNotTouched()));
  const pieces = wraps.flatMap((wrap, i): (BeltRun | BeltArc)[] => {
    const arc = pieceOf(wrap, outset, grinder.lean);
    const next = wraps[(i + 1) % wraps.length] ?? wrap;
    const from = leaned(onRound(wrap.support, wrap.end, outset), grinder.lean);
    const to = leaned(onRound(next.support, wrap.end, outset), grinder.lean);
    const face = wrap.support.id === LOWER && next.support.id === UPPER;
    const run: BeltRun = { kind: 'run', from, to, over: face ? 'platen' : 'span' };
    return [
      ...(arcLength(arc) > NOTHING ? [arc] : []),
      ...(distance2(from, to) > NOTHING ? [run] : []),
    ];
  });
  const length = pieces.reduce(
    (sum, piece) =>
      sum + (piece.kind === 'run' ? distance2(piece.from, piece.to) : arcLength(piece)),
    0,
  );
  return ok({ pieces, length });
};
