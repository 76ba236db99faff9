import type { Vec2 } from '../geometry/vector.ts';
import { leaned } from './belt-path.ts';
import type { KeepOut } from './schema.ts';

/** How far a keep-out box leans, degrees: as the platen that it goes with, or not at all. */
export const leanOf = ({ goes }: KeepOut, lean: number): number => (goes === 'platen' ? lean : 0);

/** The corners of a keep-out box seen along the stroke, (y, z), as it stands. */
export const keepOutSide = (box: KeepOut, lean: number): Vec2[] => {
  const [[, y0, z0], [, y1, z1]] = [box.min, box.max];
  const corners: Vec2[] = [
    [y0, z0],
    [y1, z0],
    [y1, z1],
    [y0, z1],
  ];
  return corners.map((corner) => leaned(corner, leanOf(box, lean)));
};
