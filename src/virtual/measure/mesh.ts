import { loft } from '../../blade/loft.ts';
import type { Mesh } from '../../geometry/mesh.ts';
import type { Field } from '../field.ts';

/** Ricasso and blade between the two faces as a closed mesh in blade coordinates (u, v, w), mm. */
export const fieldMesh = ({ us, rows, v, left, right }: Field): Mesh =>
  loft(
    Array.from(us, (u, i) => ({
      u,
      rungs: Array.from({ length: rows }, (_, j) => {
        const k = i * rows + j;
        return { v: v[k] ?? 0, left: left[k] ?? 0, right: right[k] ?? 0 };
      }),
    })),
  );
