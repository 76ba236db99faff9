import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bevelPlace,
  edgeOffsets,
  wantedBevel,
  wantedHeightAt,
  type Wanted,
} from '../../src/blade/bevel.ts';
import { placeAt, placeOn } from '../../src/blade/place.ts';
import { bladeIssues } from '../../src/blade/rules.ts';
import type { Blade, Outline } from '../../src/blade/schema.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { anyBlade, plainBlade } from './arbitrary.ts';

const withOutline = (changes: Partial<Extract<Outline, { kind: 'dimensions' }>>): Blade => ({
  ...plainBlade,
  outline: { ...plainBlade.outline, ...changes } as Outline,
});

describe('a place on the blade', () => {
  it('is as high as stated on the straight and 0 at the tip', () => {
    expect(placeAt(plainBlade, 40)).toMatchObject({ height: 30, slope: 0, thickness: 3 });
    expect(placeAt(plainBlade, 140).height).toBe(0);
    expect(placeAt(plainBlade, -10).height).toBe(30);
  });

  it('is measured square to a falling spine', () => {
    const blade = withOutline({ tipDrop: 12, spineDropStart: 60 });
    const place = placeAt(blade, 100);
    const angle = (place.slope * Math.PI) / 180;
    const [du, dv] = [place.edge[0] - place.spine[0], place.edge[1] - place.spine[1]];
    expect(angle).toBeGreaterThan(0.1);
    expect(du * Math.cos(angle) + dv * Math.sin(angle)).toBeCloseTo(0, 9);
    expect(Math.hypot(du, dv)).toBeCloseTo(place.height, 9);
    // The foot lies on the circle of the drop: radius (80^2 + 12^2) / 24.
    const r = (80 ** 2 + 12 ** 2) / 24;
    expect(Math.hypot(100 - 60, place.spine[1] - r)).toBeCloseTo(r, 9);
  });

  it('stands on the chord of a hollow spine', () => {
    // A spine of radius 915 on a seat of 50: sagitta 0.341593818 (circular segment).
    const sagitta = 915 - Math.sqrt(915 ** 2 - 70 ** 2);
    const hollow = shapeOf(withOutline({ spineSagitta: -sagitta }));
    const touching = placeOn(hollow, 70);
    const seated = placeOn(hollow, 70, 50);
    expect(touching.spine[1]).toBeCloseTo(sagitta, 9);
    expect(touching.spine[1] - seated.spine[1]).toBeCloseTo(0.341593818, 8);
    expect(seated.height - touching.height).toBeCloseTo(0.341593818, 8);
    const bulging = shapeOf(withOutline({ spineSagitta: sagitta }));
    expect(placeOn(bulging, 70, 50)).toEqual(placeOn(bulging, 70));
  });

  it('meets the edge square to the spine on any valid blade', () => {
    fc.assert(
      fc.property(anyBlade, fc.integer({ min: 0, max: 95 }), (blade, percent) => {
        fc.pre(bladeIssues(blade, '').length === 0);
        const shape = shapeOf(blade);
        const place = placeOn(shape, (percent / 100) * shape.length);
        const [du, dv] = [place.edge[0] - place.spine[0], place.edge[1] - place.spine[1]];
        const slope = Math.tan((place.slope * Math.PI) / 180);
        expect(Math.abs(du + dv * slope)).toBeLessThan(1e-7);
        expect(place.edge[1]).toBeCloseTo(shape.edge.value(place.edge[0]), 7);
        // No nearer crossing: every point before the edge lies above it.
        for (let i = 1; i < 20; i += 1) {
          const u = place.spine[0] + (du * i) / 20;
          expect(place.spine[1] + (dv * i) / 20).toBeLessThan(shape.edge.value(u) + 1e-9);
        }
      }),
      { numRuns: 200, seed: 1 },
    );
  });

  it('takes the thickness from its stations', () => {
    const blade: Blade = {
      ...plainBlade,
      thickness: [
        { u: 10, t: 3 },
        { u: 60, t: 2.5 },
        { u: 110, t: 1 },
      ],
    };
    const at = (u: number): number => placeAt(blade, u).thickness;
    expect([-5, 10, 35, 60, 85, 110, 130].map(at)).toEqual([3, 3, 2.75, 2.5, 1.75, 1, 1]);
  });
});

describe('edge offsets', () => {
  it('share the edge', () => {
    expect(edgeOffsets(plainBlade, 40, 0.4)).toEqual({ left: 0.2, right: 0.2 });
    const shared = { ...plainBlade, edge: { ...plainBlade.edge, shareLeft: 0.25 } };
    expect(edgeOffsets(shared, 40, 0.4)).toEqual({ left: 0.1, right: 0.30000000000000004 });
  });

  it('lie beyond the midplane where one side is not ground', () => {
    const bevels: Blade['bevels'] = { left: { kind: 'none' }, right: { kind: 'full' } };
    const { left, right } = edgeOffsets({ ...plainBlade, bevels }, 40, 0.2);
    expect(left).toBe(1.5);
    expect(right).toBeCloseTo(-1.3, 12);
  });
});

describe('wanted bevel', () => {
  const blade = (changes: Partial<Blade>): Blade => ({
    ...plainBlade,
    outline: { ...plainBlade.outline, heelHeight: 50, bellyHeight: 50, bellyStart: 60 } as Outline,
    ...changes,
  });
  const both = (bevel: Blade['bevels']['left']): Blade['bevels'] => ({ left: bevel, right: bevel });

  it('follows b = (T - e) / (2 tan a)', () => {
    // T 3, e 0.2, a 3.5 degrees: b = 2.8 / (2 * 0.0611626) = 22.8898.
    const byAngle = wantedBevel(blade({ bevels: both({ kind: 'angle', angle: 3.5 }) }), 'left');
    expect(byAngle?.bevelHeight).toBeCloseTo(22.8898, 3);
    expect(byAngle?.height).toBe(50);
    const height = byAngle?.bevelHeight ?? 0;
    const byHeight = wantedBevel(blade({ bevels: both({ kind: 'height', height }) }), 'right');
    expect(byHeight?.angle).toBeCloseTo(3.5, 9);
  });

  it('reaches the spine when full', () => {
    const full = wantedBevel(blade({ bevels: both({ kind: 'full' }) }), 'left');
    expect(full?.bevelHeight).toBe(50);
    expect(Math.tan(((full?.angle ?? 0) * Math.PI) / 180)).toBeCloseTo(1.4 / 50, 12);
  });

  it('takes the whole stock where the other side is not ground', () => {
    const bevels: Blade['bevels'] = {
      left: { kind: 'none' },
      right: { kind: 'height', height: 28 },
    };
    const wanted = wantedBevel(blade({ bevels }), 'right');
    expect(Math.tan(((wanted?.angle ?? 0) * Math.PI) / 180)).toBeCloseTo(2.8 / 28, 12);
    expect(wantedBevel(blade({ bevels }), 'left')).toBeUndefined();
  });

  it('is stated in the middle of the straight edge', () => {
    expect(bevelPlace(blade({}))).toBe(30);
    expect(
      bevelPlace(blade({ outline: { ...plainBlade.outline, bellyStart: 0 } as Outline })),
    ).toBe(35);
  });

  it('carries on along the blade as the line says', () => {
    const wanted: Wanted = { angle: 3.5, bevelHeight: 23, height: 50 };
    expect(wantedHeightAt('edge', wanted, 40)).toBe(23);
    expect(wantedHeightAt('share', wanted, 40)).toBeCloseTo(18.4, 12);
    expect(wantedHeightAt('spine', wanted, 40)).toBe(13);
    expect(wantedHeightAt('spine', wanted, 20)).toBe(0);
    expect(wantedHeightAt('edge', wanted, 20)).toBe(20);
  });
});
