import { atan } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';

/** A fresh bar with both spine corners rounded, mm. */
export interface Bar {
  readonly thickness: number;
  readonly height: number;
  readonly spineRadius: number;
}

/** Half-thickness at a distance v from the spine, within the rounded corner and beyond it. */
const halfAt = ({ thickness, spineRadius: r }: Bar, v: number): number =>
  v >= r ? thickness / 2 : thickness / 2 - r + Math.sqrt(Math.max(0, r * r - (r - v) ** 2));

/**
 * The angle (degrees, per side) whose bevel is `bevel` mm high on a fresh bar that stops at an edge
 * of `edge` mm on this side: the face runs from there to the bar's own boundary,
 *
 *     tan a = (w(H - b) - e) / b
 *
 * with w the half-thickness where the bevel ends; on the flank w = T/2, so b = (T/2 - e) / tan a.
 * Full height takes the greatest angle that reaches the spine's flat. Zero or negative when no
 * angle does. Domain: 0 < b <= H.
 */
export const angleForBevel = (bar: Bar, edge: number, bevel: number): number =>
  degrees(atan((halfAt(bar, bar.height - bevel) - edge) / bevel));
