import { describe, expect, it } from 'vitest';
import type { Curve } from '../../src/blade/curve.ts';
import { shapeOf, type Shape } from '../../src/blade/shape.ts';
import { trust, type Doubt } from '../../src/grind/spine-rest/trust.ts';
import { grinder, strip } from './samples.ts';

// Curves that are parabolas: one of k u^2 departs from its tangent by k d^2 at a distance d, so what
// the bound of a bevel height is built from can be worked out by hand.

const parabola = (k: number, at = 0): Curve => ({
  value: (u) => at + k * u * u,
  slope: (u) => 2 * k * u,
  breaks: [],
});

const rad = Math.PI / 180;
const bare = { kind: 'none', id: 'bare', thickness: 0 } as const;
const shape = (over: Partial<Shape>): Shape => ({ ...shapeOf(strip()), ...over });

const doubt: Doubt = {
  tilt: 5,
  lean: 2,
  setoff: 4.6,
  heightPerSetoff: 7,
  reach: 30,
  windowStep: 0,
  heightPerEdge: 16,
};
const boundOf = (of: Shape, over: Partial<Doubt> = {}): number => {
  const found = trust(of, 0, grinder({ lean: 2 }), bare, { ...doubt, ...over });
  return found.kind === 'bounded' ? found.by : found.kind === 'exact' ? 0 : NaN;
};

describe('the bound on a bevel height', () => {
  it('is none where spine and flanks are straight and no neighbour is in the way', () => {
    expect(boundOf(shape({}))).toBe(0);
  });

  it('counts what a bent spine adds to the tilted height and lifts along a leaning face', () => {
    const bent = shape({ spine: parabola(1e-5) });
    const off = 1e-5 * 30 ** 2;
    expect(boundOf(bent)).toBeCloseTo(7 * off * (Math.sin(5 * rad) + Math.tan(2 * rad)), 9);
    // A platen that leans towards the maker lifts it as far the other way.
    expect(boundOf(bent, { lean: -2 })).toBeCloseTo(boundOf(bent), 12);
  });

  it('counts half the swell of the thickness, and the yaw of half the taper', () => {
    const swollen = shape({ thickness: parabola(-2e-5, 3) });
    const swell = (2e-5 * 30 ** 2) / 2;
    const yaw = (2 * 2e-5 * 30) / 2;
    expect(boundOf(swollen)).toBeCloseTo(7 * (swell + (4.6 * yaw ** 2) / 2), 9);
    // An even taper swells nowhere: 2 % of thickness along the blade turn the midplane by 1 %.
    const even = shape({
      thickness: { value: (u) => 3 - 0.02 * u, slope: () => -0.02, breaks: [] },
    });
    expect(boundOf(even)).toBeCloseTo((7 * 4.6 * 0.01 ** 2) / 2, 9);
  });

  it('counts the step to the next place where neighbours hold the belt off', () => {
    expect(boundOf(shape({}), { windowStep: 0.02 })).toBeCloseTo(0.02 * 16, 12);
  });

  it('is an estimate on anything that gives way or is round', () => {
    const round = { kind: 'radius', id: 'r', thickness: 5, radius: 900 } as const;
    const soft = { kind: 'leather', id: 'l', thickness: 5 } as const;
    for (const backing of [round, soft])
      expect(trust(shape({}), 0, grinder(), backing, doubt).kind).toBe('estimate');
  });
});
