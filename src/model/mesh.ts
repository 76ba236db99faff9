export type { Mesh } from '../geometry/mesh.ts';
