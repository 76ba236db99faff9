import { containsPoint } from '../../src/geometry/loop-measure.ts';
import { localise, turn } from '../../src/geometry/frame.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { HardwarePart, Hole, Part, Placement, PlatePart } from '../../src/model/part.ts';

/**
 * Published rows, read here apart from the program's tables. Clearance holes ISO 273 (close,
 * normal, loose) and drills before tapping ISO 2306, mm; from the open tables named in the
 * hardware tests.
 */
const CLEARANCE: Readonly<Record<string, readonly number[]>> = {
  M4: [4.3, 4.5, 4.8],
  M5: [5.3, 5.5, 5.8],
  M6: [6.4, 6.6, 7],
  M8: [8.4, 9, 10],
  M10: [10.5, 11, 12],
};
const TAP: Readonly<Record<string, number>> = { M4: 3.3, M5: 4.2, M6: 5, M8: 6.8, M10: 8.5 };

/** Holes of a plate whose size is in no published row, by id. */
export const unknownSizes = (part: Part): string[] => {
  if (part.kind !== 'plate') return [];
  const passages = Object.values(CLEARANCE).flat();
  return part.holes
    .filter(({ size, thread, purpose }) => {
      if (thread !== undefined) return TAP[thread] !== size;
      // Pins and their slots are sized by the pin, reliefs by the head they take, slots for tabs
      // by the sheet they take.
      if (/pin|head|tab/i.test(purpose)) return false;
      return !passages.includes(size);
    })
    .map(({ id, size }) => `${part.id}.${id} ${String(size)}`);
};

/** Nominal diameter of a placed screw, pin or rod, from its designation. */
const diameterOf = (part: Part): number | undefined => {
  if (part.kind !== 'hardware') return undefined;
  const screw = /^(?:ISO 4762|ISO 4017|DIN 976-1) - M(\d+) x/.exec(part.designation);
  const pin = /^ISO 8734 - (\d+) x/.exec(part.designation);
  const found = screw?.[1] ?? pin?.[1];
  return found === undefined ? undefined : Number(found);
};

/** Where a placed screw, pin or rod crosses a flat-lying plate that it is said to touch. */
interface Crossing {
  readonly screw: Placement;
  readonly piece: HardwarePart;
  readonly diameter: number;
  readonly plate: PlatePart;
  readonly name: string;
  /** Length of shank inside the plate, mm. */
  readonly inside: number;
  /** The place on the plate. */
  readonly at: Vec2;
  readonly hole: Hole | undefined;
}

const crossings = (parts: readonly Part[], placements: readonly Placement[]): Crossing[] => {
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const placed = new Map(placements.map((p) => [p.name, p]));
  return placements.flatMap((screw) => {
    const piece = partOf.get(screw.part);
    const diameter = piece && diameterOf(piece);
    if (piece?.kind !== 'hardware' || diameter === undefined) return [];
    const length = Math.max(...piece.layers.map(({ to }) => Math.abs(to)), 0);
    const shank = Math.min(...piece.layers.map(({ from }) => from));
    const [x, y, z] = screw.frame.origin;
    const [dx, dy, dz] = turn(screw.frame, [0, 0, shank < 0 ? shank : length]);
    return screw.touches.flatMap((name): Crossing[] => {
      const other = placed.get(name);
      const plate = other && partOf.get(other.part);
      if (!other || plate?.kind !== 'plate') return [];
      const thickness = plate.layers[0]?.to ?? 0;
      const top = localise(other.frame, [x, y, z]);
      const tip = localise(other.frame, [x + dx, y + dy, z + dz]);
      const low = Math.max(0, Math.min(top[2], tip[2]));
      const high = Math.min(thickness, Math.max(top[2], tip[2]));
      // Only plates that the shank crosses; others are touched by a head or an end.
      if (high - low <= 1e-6) return [];
      const at: Vec2 = [top[0], top[1]];
      const hole = plate.holes.find((h) => containsPoint(h.loop, at));
      return [{ screw, piece, diameter, plate, name, inside: high - low, at, hole }];
    });
  });
};

/**
 * Screws and pins that are said to touch a flat-lying plate but pass it through no hole, or
 * through one that they do not fit: names of both.
 */
export const strayScrews = (parts: readonly Part[], placements: readonly Placement[]): string[] =>
  crossings(parts, placements).flatMap(({ screw, piece, diameter, plate, name, at, hole }) => {
    if (!hole) {
      const box = plate.layers[0]?.profile.outer;
      // One of several equal plates: the screw may pass beside this one.
      return box && containsPoint(box, at) ? [`${screw.name} through ${name}`] : [];
    }
    const isPin = piece.designation.startsWith('ISO 8734');
    // A pin's hole is made a little small and reamed, unless it is a slot that slides over it.
    const reamed = isPin && hole.slotLength === undefined;
    const fits = reamed
      ? hole.size < diameter && hole.size > diameter - 0.3
      : hole.thread === undefined
        ? hole.size >= diameter
        : hole.size < diameter;
    // Its shank stands inside a round hole, and in the middle of one that is cut or reamed for it.
    const room = hole.slotLength === undefined ? Math.max(0, hole.size - diameter) / 2 : Infinity;
    const isInside = Math.hypot(at[0] - hole.at[0], at[1] - hole.at[1]) <= room + 1e-6;
    return fits && isInside ? [] : [`${screw.name} in ${name}.${hole.id}`];
  });

/** Least thread in steel of a screw that holds, in diameters: common practice, no source. */
const LEAST_THREAD = 0.8;

/**
 * Cap screws that are turned into threads of plates but find too little of them there, with what
 * they find, mm.
 */
export const shortScrews = (parts: readonly Part[], placements: readonly Placement[]): string[] => {
  const found = new Map<string, { readonly diameter: number; readonly length: number }>();
  for (const { screw, piece, diameter, inside, hole } of crossings(parts, placements))
    if (piece.designation.startsWith('ISO 4762') && hole?.thread !== undefined)
      found.set(screw.name, { diameter, length: (found.get(screw.name)?.length ?? 0) + inside });
  return [...found].flatMap(([name, { diameter, length }]) =>
    length < LEAST_THREAD * diameter - 1e-6 ? [`${name} ${length.toFixed(2)}`] : [],
  );
};
