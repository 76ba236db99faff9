import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { isOn } from '../../geometry/loop-measure.ts';
import { apart2, distance2, type Vec2 } from '../../geometry/vector.ts';
import { clip, onBorder, type HalfPlane } from './clip.ts';
import type { Section } from './section.ts';

/**
 * A flat-ground face on the belt side: half-thickness `edge` (mm from the midplane at the edge's
 * height, negative when it lies past the midplane) growing towards the spine by tan(`angle`),
 * degrees between midplane and face.
 */
export interface Face {
  readonly edge: number;
  readonly angle: number;
}

/** The half-plane a face leaves: -w <= edge + (H - v) tan a, written with a unit normal. */
export const behindFace = (height: number, { edge, angle }: Face): HalfPlane => {
  const [c, s] = [cos(radians(angle)), sin(radians(angle))];
  return { normal: [-c, s], offset: edge * c + height * s };
};

/** The section after its belt side was ground to a face. */
export const ground = (section: Section, face: Face): Section => ({
  height: section.height,
  outline: clip(section.outline, behindFace(section.height, face)),
});

/**
 * The part of a face's line that lies in a section, from its spine end to its edge end (w, v):
 * where the belt bears when the face is reached. Undefined where the face does not meet the metal.
 */
export const bearing = (section: Section, face: Face): readonly [Vec2, Vec2] | undefined => {
  let low: Vec2 | undefined;
  let high: Vec2 | undefined;
  for (const p of onBorder(section.outline, behindFace(section.height, face))) {
    if (low === undefined || p[1] < low[1]) low = p;
    if (high === undefined || p[1] > high[1]) high = p;
  }
  if (low === undefined || high === undefined) return undefined;
  const apart = Math.abs(high[1] - low[1]) >= 1e-9 || distance2(low, high) >= 1e-9;
  return apart ? [low, high] : undefined;
};

/** How near the bar's own contour a corner of a ground section counts as untouched, mm. */
const UNTOUCHED = 1e-7;

/**
 * Height of the grind line of the belt side over the edge along the midplane, mm: up to where the
 * contour of the unground bar begins, whichever faces lie between. The bar's height when none of
 * it is left, 0 when all is.
 */
export const grindLine = ({ height, outline }: Section, bar: Section): number => {
  const corner = beltSide(bar);
  let line = 0;
  for (const { x, y } of outline.vertices) {
    if (x >= 0) continue;
    if (y > height - UNTOUCHED && apart2(x, y, corner, bar.height) < UNTOUCHED) return 0;
    if (y > line && y < height - UNTOUCHED && isOn(bar.outline, [x, y], UNTOUCHED)) line = y;
  }
  return height - line;
};

/** How far a bar reaches on the belt side: there its edge has its corner. */
const beltSide = ({ outline }: Section): number => {
  let least = Infinity;
  for (const { x } of outline.vertices) least = Math.min(least, x);
  return least;
};

/**
 * Bevel height of a face on its own, mm: from the edge along the midplane to the upper limit of the face, where it
 * runs out into the metal that was there (flank, an earlier bevel, the rounded spine corner), or
 * through the spine itself, which is full height. 0 when nothing is ground.
 */
export const bevelHeight = (section: Section, face: Face): number => {
  const bears = bearing(section, face);
  return bears === undefined ? 0 : Math.min(section.height, section.height - bears[0][1]);
};
