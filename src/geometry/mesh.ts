/**
 * A triangle mesh: flat vertex coordinates (x y z, mm) and flat corner indices (three a
 * triangle, anticlockwise seen from outside). Vertices are shared: a closed mesh has every edge
 * in exactly two triangles.
 */
export interface Mesh {
  readonly vertices: Float64Array;
  readonly triangles: Uint32Array;
}
