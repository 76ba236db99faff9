import type { Mesh } from '../geometry/mesh.ts';
import { bladeSections, tangSections, type BladeOptions } from './blade-sections.ts';
import { loft } from './loft.ts';
import type { Blade } from './schema.ts';

/** Blade and tang as two closed meshes in blade coordinates (u, v, w), mm. */
export interface BladeMesh {
  /** Ricasso and blade in one piece. */
  readonly blade: Mesh;
  /** Tang or handle; it meets the blade in a plane. */
  readonly tang: Mesh;
}

/** Blade and tang through their sections. */
export const bladeMesh = (blade: Blade, options: BladeOptions): BladeMesh => ({
  blade: loft(bladeSections(blade, options)),
  tang: loft(tangSections(blade)),
});
