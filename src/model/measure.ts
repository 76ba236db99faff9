import { boundingBox, profileArea, unionBox, type Box2 } from '../geometry/loop-measure.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Layer, Part } from './part.ts';

/** Volume of a stack in closed form, mm^3: exact area times height, layer by layer. */
export const stackVolume = (layers: readonly Layer[]): number =>
  layers.reduce((sum, { profile, from, to }) => sum + profileArea(profile) * (to - from), 0);

const outlines = (layers: readonly Layer[]): Box2 =>
  unionBox(layers.map((layer) => boundingBox(layer.profile.outer)));

/** Exact bounding box of a stack, mm; the stack must have a layer. */
export const stackBox = (layers: readonly Layer[]): { readonly min: Vec3; readonly max: Vec3 } => {
  const { min, max } = outlines(layers);
  return {
    min: [min[0], min[1], Math.min(...layers.map((layer) => layer.from))],
    max: [max[0], max[1], Math.max(...layers.map((layer) => layer.to))],
  };
};

/** Mass of one piece of a part from its nominal volume and density, grams. */
export const massOf = (part: Pick<Part, 'layers' | 'density'>): number =>
  (stackVolume(part.layers) / 1000) * part.density;
