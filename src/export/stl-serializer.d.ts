/** The serializer ships no types; this is the one function of it that is used. */
declare module '@jscad/stl-serializer/CSGToStlb.js' {
  interface Solid {
    readonly polygons: readonly { readonly vertices: readonly (readonly number[])[] }[];
    /** Column-major 4 x 4 placement. */
    readonly transforms: readonly number[];
  }
  /** Header of 80 bytes, triangle count and triangles, one after the other. */
  export const serializeBinary: (
    objects: readonly Solid[],
    options: Readonly<Record<string, never>>,
  ) => readonly [ArrayBuffer, ArrayBuffer, ArrayBuffer];
}
