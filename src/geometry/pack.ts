import type { Vec2 } from './vector.ts';

/** Where the box number `index` stands: its lower left corner on the sheet number `sheet`. */
export interface Packed {
  readonly index: number;
  readonly sheet: number;
  readonly at: Vec2;
  /** Turned by a quarter, anticlockwise, so that its width and height have changed places. */
  readonly turned: boolean;
}

export interface PackOptions {
  /** Width and height of every sheet, mm. */
  readonly sheet: Vec2;
  /** Least distance between two boxes, and from a box to the edge of the sheet, mm. */
  readonly gap: number;
  readonly margin: number;
}

/** A level stretch of what is filled: everything below `y` from `x` on over `width` is taken. */
interface Step {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

interface Place {
  readonly at: Vec2;
  readonly size: Vec2;
  readonly turned: boolean;
}

const SLACK = 1e-9;

/** Height at which a box of some width rests when its left edge is at the start of a step. */
const restsAt = (steps: readonly Step[], first: number, width: number, room: Vec2): number => {
  const left = steps[first]?.x ?? 0;
  if (left + width > room[0] + SLACK) return Infinity;
  return steps
    .slice(first)
    .filter(({ x }) => x < left + width - SLACK)
    .reduce((highest, { y }) => Math.max(highest, y), 0);
};

/** The place with the lowest top, the leftmost of those, unturned before turned. */
const bestPlace = (steps: readonly Step[], [w, h]: Vec2, room: Vec2): Place | undefined => {
  const places = [false, true].flatMap((turned) => {
    const size: Vec2 = turned ? [h, w] : [w, h];
    return steps.map((step, i): Place => ({
      at: [step.x, restsAt(steps, i, size[0], room)],
      size,
      turned,
    }));
  });
  const top = ({ at, size }: Place): number => at[1] + size[1];
  return places
    .filter((place) => top(place) <= room[1] + SLACK)
    .reduce<Place | undefined>(
      (best, place) =>
        best === undefined ||
        top(place) < top(best) - SLACK ||
        (top(place) < top(best) + SLACK && place.at[0] < best.at[0] - SLACK)
          ? place
          : best,
      undefined,
    );
};

/** The skyline once a box stands on it. */
const raised = (steps: readonly Step[], { at: [x, y], size: [w, h] }: Place): Step[] => {
  const kept = steps.flatMap((step) => {
    const end = step.x + step.width;
    const before = { ...step, width: Math.min(end, x) - step.x };
    const from = Math.max(step.x, x + w);
    return [before, { x: from, y: step.y, width: end - from }].filter(({ width }) => width > SLACK);
  });
  return [...kept, { x, y: y + h, width: w }].sort((a, b) => a.x - b.x);
};

/**
 * Lays boxes (width and height, mm) out on as few equal sheets as the rule gives: largest first,
 * each as low and then as far left as it goes above what is laid already, turned by a quarter
 * where that is lower (the known "skyline, bottom left" rule). Boxes that fit on no sheet are
 * told by number. The same boxes give the same layout.
 */
export const pack = (
  boxes: readonly Vec2[],
  { sheet, gap, margin }: PackOptions,
): { readonly packed: readonly Packed[]; readonly tooLarge: readonly number[] } => {
  // Every box carries half a gap around it, and so does the usable part of the sheet.
  const room: Vec2 = [sheet[0] - 2 * margin + gap, sheet[1] - 2 * margin + gap];
  const wide = boxes.map(([w, h]): Vec2 => [w + gap, h + gap]);
  const order = wide
    .map((size, index) => ({ size, index }))
    .sort((a, b) => Math.max(...b.size) - Math.max(...a.size) || a.index - b.index);
  const skylines: Step[][] = [];
  const packed: Packed[] = [];
  const tooLarge: number[] = [];
  for (const { size, index } of order) {
    const fresh: Step[] = [{ x: 0, y: 0, width: room[0] }];
    if (bestPlace(fresh, size, room) === undefined) {
      tooLarge.push(index);
      continue;
    }
    const found = skylines.findIndex((steps) => bestPlace(steps, size, room) !== undefined);
    const on = found < 0 ? skylines.length : found;
    const steps = skylines[on] ?? fresh;
    const place = bestPlace(steps, size, room);
    if (place === undefined) continue;
    skylines[on] = raised(steps, place);
    packed.push({
      index,
      sheet: on,
      at: [place.at[0] + margin, place.at[1] + margin],
      turned: place.turned,
    });
  }
  return { packed, tooLarge };
};
