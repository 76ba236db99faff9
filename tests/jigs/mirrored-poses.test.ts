import { describe, expect, it } from 'vitest';
import { cutsOf, isEven } from '../../jigs/edge-rest/blade.ts';
import { edgeTouchable, settleEdge } from '../../jigs/edge-rest/pose/settle.ts';
import { mirrored } from '../../jigs/shared/pose/sides.ts';
import { touchable } from '../../jigs/shared/pose/touchable.ts';
import { settleMesh } from '../../jigs/spine-rest/pose/settle-mesh.ts';
import { bladeMesh } from '../../src/blade/blade-mesh.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import type { Frame } from '../../src/geometry/frame.ts';
import { examplesOf } from '../family/examples.ts';

/** Settling ends where a round moves nothing by 1e-9 mm; rounds that come near slowly leave some tens. */
const SETTLED = 1e-7;

const off = (one: Frame | undefined, other: Frame | undefined): number => {
  if (!one || !other) return NaN;
  const keys = ['origin', 'x', 'y', 'z'] as const;
  return Math.max(
    ...keys.flatMap((key) => one[key].map((value, k) => Math.abs(value - (other[key][k] ?? NaN)))),
  );
};

describe('a blade on its right side', () => {
  it('stands on a spine rest as a mirror shows its left', () => {
    for (const blade of examplesOf('spine-rest').flatMap(({ design }) => design.blades)) {
      const spine = touchable(bladeMesh(blade, { chord: 0.005 }).blade, 20);
      const contacts = { noseHalf: 45, stepHalf: 30, stepTop: 15, setoff: 4 };
      for (const share of [0.2, 0.6, 0.95]) {
        const u = share * shapeOf(blade).length;
        for (const [tilt, load] of [
          [2, 0],
          [7, -6],
        ] as const) {
          const left = settleMesh(spine, { side: 'left', u, tilt, load }, contacts);
          const right = settleMesh(spine, { side: 'right', u, tilt, load: -load }, contacts);
          expect(off(right, left && mirrored(left))).toBeLessThan(SETTLED);
        }
      }
    }
  });

  it('stands on an edge rest as a mirror shows its left, where it is even', () => {
    const blades = examplesOf('edge-rest').flatMap(({ design }) => design.blades);
    expect(blades.map(isEven)).toContain(true);
    expect(blades.map(isEven)).toContain(false);
    for (const blade of blades) {
      const { blade: mesh } = bladeMesh(blade, { chord: 0.005, sides: cutsOf(blade) });
      const { edge, length } = shapeOf(blade);
      const at = [0.5 * length, edge.value(0.5 * length)] as const;
      const contacts = { half: 50, lipEnd: 50, pads: false, lip: 3, lipHeight: 1.5 };
      const settled = (side: 'left' | 'right', load: number): Frame | undefined =>
        settleEdge(edgeTouchable(mesh, 1.5), { side, at, tilt: 6, load }, contacts);
      const left = settled('left', 5);
      const apart = off(settled('right', -5), left && mirrored(left));
      if (isEven(blade)) expect(apart).toBeLessThan(SETTLED);
      else expect(Number.isFinite(apart)).toBe(true);
    }
  });
});
