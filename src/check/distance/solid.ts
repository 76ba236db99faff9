import type { Vec3 } from '../../geometry/vector.ts';
import type { Pieces } from './pieces.ts';
import type { Tree } from './tree.ts';

/**
 * What the pieces of a solid are: facets of its closed surface; prisms that fill it, of which each has
 * its lower corners anticlockwise and then those above them; or bodies that fill it, which may overlap.
 */
export type Filling = 'facets' | 'prisms' | 'bodies';

/** A bounded solid ready for distance queries: build it once, use it in every check. */
export interface TreeSolid {
  readonly kind: 'tree';
  readonly pieces: Pieces;
  readonly tree: Tree;
  readonly of: Filling;
  /** One point of every connected part (x y z each). */
  readonly anchors: Float64Array;
  /** How far the pieces may stand proud of the shape asked for, mm: makes a gap smaller. */
  readonly proud: number;
}

export interface PlaneSolid {
  readonly kind: 'plane';
  /** Unit normal out of the solid, and its offset: points p with n.p > offset are outside. */
  readonly normal: Vec3;
  readonly offset: number;
}

export type Solid = TreeSolid | PlaneSolid;
