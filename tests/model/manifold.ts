import Module from 'manifold-3d';
import type { Mesh } from '../../src/model/mesh.ts';

const wasm = await Module();
wasm.setup();

/** The reference library for solids, loaded once a test file. */
export const { Manifold, CrossSection } = wasm;

/** Our mesh as a solid of the reference library, which refuses anything that leaks. */
export const toManifold = ({ vertices, triangles }: Mesh): InstanceType<typeof Manifold> =>
  new Manifold(
    new wasm.Mesh({
      numProp: 3,
      vertProperties: Float32Array.from(vertices),
      triVerts: Uint32Array.from(triangles),
    }),
  );
