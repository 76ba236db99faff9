import { describe, expect, it } from 'vitest';
import { settleMesh } from '../../jigs/spine-rest/pose/settle-mesh.ts';
import { around, touchable } from '../../jigs/shared/pose/touchable.ts';
import { bladeMesh } from '../../src/blade/blade-mesh.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { place } from '../../src/geometry/frame.ts';
import { examplesOf } from '../family/examples.ts';

const CHORD = 0.001;
/**
 * A chord 0.001 mm off an arc of radius R is turned from it by up to sqrt(2 * 0.001 / R): a blade whose
 * spine falls to the tip stands turned by as much on either mesh, 40 mm from where it stands by 0.1 mm
 * at R = 300. They were seen to differ by a fifth of that.
 */
const ROLLED = 40 * Math.sqrt((2 * CHORD) / 300);

const CONTACTS = { noseHalf: 30, stepHalf: 35, stepTop: 6, setoff: 5 };

describe('the strip along a spine', () => {
  it('is meshed alone as it is of the whole blade, within the chord errors of both', () => {
    const depth = CONTACTS.stepTop + 2;
    const only = { along: 'spine', reach: depth + 1 } as const;
    let [whole, alone] = [0, 0];
    for (const { design } of examplesOf('spine-rest'))
      for (const blade of design.blades) {
        const meshes = [
          bladeMesh(blade, { chord: CHORD }),
          bladeMesh(blade, { chord: CHORD, only }),
        ] as const;
        const [all, strip] = [touchable(meshes[0].blade, depth), touchable(meshes[1].blade, depth)];
        whole += all.points.length;
        alone += strip.points.length;
        const { length } = shapeOf(blade);
        for (const [share, most] of [
          [0.3, 4 * CHORD],
          [0.7, ROLLED],
        ] as const)
          for (const tilt of [2, 4, 7]) {
            const u = share * length;
            const [one, other] = [all, strip].map((of) =>
              settleMesh(
                around(of, u, [CONTACTS.noseHalf, CONTACTS.stepHalf]),
                { side: 'left', u, tilt, load: 0 },
                CONTACTS,
              ),
            );
            if (!one || !other) throw new Error(`${blade.name} does not stand at ${u.toFixed(0)}`);
            for (const along of [-30, 30])
              for (const v of [0, 40]) {
                const [p, q] = [one, other].map((frame) => place(frame, [u + along, v, 0]));
                p?.forEach((x, k) => expect(Math.abs(x - (q?.[k] ?? NaN))).toBeLessThan(most));
              }
          }
      }
    expect(alone).toBeLessThan(0.8 * whole);
  });
});
