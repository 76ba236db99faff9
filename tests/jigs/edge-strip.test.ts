import { describe, expect, it } from 'vitest';
import { cutsOf } from '../../jigs/edge-rest/blade.ts';
import {
  edgeTouchable,
  MOST_LEAN,
  settleEdge,
  touchedDepth,
} from '../../jigs/edge-rest/pose/settle.ts';
import { createRoom } from '../../jigs/shared/pose/placed-points.ts';
import { across, NEAR, within } from '../../jigs/shared/pose/touchable.ts';
import { bladeMesh } from '../../src/blade/blade-mesh.ts';
import { SIDES } from '../../src/blade/schema.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { place } from '../../src/geometry/frame.ts';
import { examplesOf } from '../family/examples.ts';

const HALF = 50;
const LIP_HEIGHT = 1.5;

describe('the strip along an edge', () => {
  const blades = examplesOf('edge-rest').flatMap(({ design }) => design.blades);

  it('is all of a blade that seat and lip can touch: it settles as the whole does', () => {
    const room = createRoom();
    let compared = 0;
    for (const blade of blades) {
      const { blade: mesh } = bladeMesh(blade, { chord: 0.005, sides: cutsOf(blade) });
      const all = edgeTouchable(mesh, Infinity);
      const strip = edgeTouchable(mesh, LIP_HEIGHT);
      expect(strip.points.length).toBeLessThan(0.8 * all.points.length);
      const { edge, length } = shapeOf(blade);
      for (const share of [0.2, 0.5, 0.8]) {
        const u = share * length;
        const halves = [HALF, 5];
        const near = within(strip, u, HALF + NEAR);
        const ending = across(near, u, halves);
        for (const tilt of [-MOST_LEAN, -20, -3, 0, 8, 30, MOST_LEAN]) {
          for (const [pads, lipEnd] of [
            [false, HALF],
            [true, 5],
          ] as const) {
            for (const side of SIDES) {
              const contacts = { half: HALF, lipEnd, pads, lip: 3, lipHeight: LIP_HEIGHT };
              const at = [u, edge.value(u)] as const;
              const whole = settleEdge(all, { side, at, tilt }, contacts, room);
              const part = settleEdge(near, { side, at, tilt }, contacts, room, ending);
              expect(part === undefined).toBe(whole === undefined);
              if (!part || !whole) continue;
              compared += 1;
              // Settling ends where nothing moves by 1e-9 mm.
              for (const key of ['origin', 'x', 'y', 'z'] as const) {
                part[key].forEach((value, k) => {
                  expect(Math.abs(value - (whole[key][k] ?? NaN))).toBeLessThan(1e-8);
                });
              }
            }
          }
        }
      }
    }
    expect(compared).toBeGreaterThan(200);
  });

  it('is meshed alone as it is of the whole blade, within the chord errors of both', () => {
    const room = createRoom();
    const chord = 0.001;
    for (const blade of blades) {
      const sides = cutsOf(blade);
      const thickest = Math.max(...blade.thickness.map(({ t }) => t));
      const only = { along: 'edge', reach: touchedDepth(thickest, LIP_HEIGHT) + 1 } as const;
      const whole = edgeTouchable(bladeMesh(blade, { chord, sides }).blade, LIP_HEIGHT);
      const alone = edgeTouchable(bladeMesh(blade, { chord, sides, only }).blade, LIP_HEIGHT);
      expect(alone.points.length).toBeLessThan(0.8 * whole.points.length);
      const { edge, length } = shapeOf(blade);
      for (const share of [0.2, 0.5, 0.8])
        for (const tilt of [-20, -3, 8, 30]) {
          const u = share * length;
          const at = [u, edge.value(u)] as const;
          const contacts = { half: HALF, lipEnd: HALF, pads: false, lip: 3, lipHeight: LIP_HEIGHT };
          const [one, other] = [whole, alone].map((of) =>
            settleEdge(of, { side: 'left', at, tilt }, contacts, room),
          );
          expect(one).toBeDefined();
          expect(other).toBeDefined();
          if (!one || !other) continue;
          // Ends of the stretch under the belt, on edge and spine: seat and lip are as far apart.
          for (const along of [-HALF, HALF])
            for (const v of [at[1], 0]) {
              const [p, q] = [one, other].map((frame) => place(frame, [u + along, v, 0]));
              p?.forEach((x, k) => expect(Math.abs(x - (q?.[k] ?? NaN))).toBeLessThan(4 * chord));
            }
        }
    }
  });
});
