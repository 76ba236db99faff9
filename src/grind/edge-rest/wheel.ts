import { ok, type Result } from '../../core/result.ts';
import { beltPath, leaned } from '../../grinder/belt-path.ts';
import type { Abrasive, Backing, Grinder, Wheel } from '../../grinder/schema.ts';
import type { Contact } from './push.ts';
import type { WheelAtSeat } from './stand.ts';

/** The wheel under a belt, with where its abrasive is foremost in the grinder frame, mm. */
export interface PlacedWheel extends WheelAtSeat {
  /** y of the foremost point from the bare platen's line: the seat frame's y = 0. */
  readonly foremost: number;
}

/**
 * The wheel as a seat `stack` above the rest meets it. Its axis turns with the machine's lean about
 * the rest's front line; the seat stays level, so a leaning machine only moves the axis.
 */
export const wheelAtSeat = (
  grinder: Grinder,
  wheel: Wheel,
  belt: Pick<Abrasive, 'thickness'>,
  stack: number,
): PlacedWheel => {
  const [y, z] = leaned(wheel.centre, grinder.lean);
  const radius = wheel.diameter / 2 + belt.thickness;
  return { radius, drop: z - stack, foremost: y + radius };
};

/** Where the belt lies on a wheel: directions of its normals, degrees; undefined if nowhere. */
export const wrapOn = (
  grinder: Grinder,
  backing: Backing,
  wheel: Wheel,
): Result<Contact | undefined> => {
  const belt = beltPath(grinder, backing);
  if (!belt.ok) return belt;
  const arcs = belt.value.pieces.flatMap((piece) =>
    piece.kind === 'arc' && piece.over === wheel.id ? [piece] : [],
  );
  const [arc] = arcs;
  if (arc === undefined) return ok(undefined);
  // Directions are counted from the front: the arc that holds it, or is nearest to it.
  const turns = 360 * Math.round((arc.start + arc.end) / 2 / 360);
  return ok({ from: arc.start - turns, to: arc.end - turns });
};

/** By how much a contact lies within the wrap, degrees; negative outside. */
export const wrapMargin = (wrap: Contact, contact: Contact): number =>
  Math.min(contact.from - wrap.from, wrap.to - contact.to);
