import type { Frame } from '../../geometry/frame.ts';
import type { PathLoop } from '../../geometry/loop.ts';
import type { Vec3 } from '../../geometry/vector.ts';
import type { Mesh } from '../../model/mesh.ts';
import type { Prism } from '../../model/prisms.ts';

/** All space behind a plane: `normal` (unit) points out of the solid. */
export interface HalfSpace {
  readonly kind: 'half-space';
  readonly point: Vec3;
  readonly normal: Vec3;
}

/** A block centred on the frame's origin, `size` along the frame's axes, mm. */
export interface Box {
  readonly kind: 'box';
  readonly frame: Frame;
  readonly size: Vec3;
}

/** A round bar with flat ends, mm. */
export interface Cylinder {
  readonly kind: 'cylinder';
  readonly from: Vec3;
  readonly to: Vec3;
  readonly radius: number;
}

/** The convex hulls of several lists of points, which fill a solid together. */
export interface Hulls {
  readonly kind: 'hulls';
  readonly hulls: readonly (readonly Vec3[])[];
  /** How far they may stand proud of that solid, mm (default: not at all). */
  readonly proud?: number;
}

/** Prisms along the frame's z that fill a solid together; `frame` places them (default: as they stand). */
export interface Prisms {
  readonly kind: 'prisms';
  readonly prisms: readonly Prism[];
  readonly frame?: Frame;
}

/**
 * A belt: `path` is its inner face in the frame's x-y plane, anticlockwise, straight runs and
 * exact arcs; the belt lies outside it with `thickness`, and reaches `width / 2` to both sides
 * along the frame's z, mm.
 */
export interface Belt {
  readonly kind: 'belt';
  readonly frame: Frame;
  readonly path: PathLoop;
  readonly thickness: number;
  readonly width: number;
}

/** A closed triangle mesh; `frame` places it (default: as it stands). */
export interface MeshShape {
  readonly kind: 'mesh';
  readonly mesh: Mesh;
  readonly frame?: Frame;
}

export type Shape = HalfSpace | Box | Cylinder | Hulls | Prisms | Belt | MeshShape;
