import { describe, expect, it } from 'vitest';
import { clearance } from '../../src/check/distance/index.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import { withValue } from '../../src/core/path.ts';
import { machineBodies } from '../../src/family/grinder-bodies.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import { beltPath } from '../../src/grinder/belt-path.ts';
import { frontWheel } from '../../src/grinder/front-wheel.ts';
import { keepOutSide } from '../../src/grinder/keep-out.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderIssues } from '../../src/grinder/rules.ts';
import type { Grinder, Wheel } from '../../src/grinder/schema.ts';

const off = (grinder: Grinder) => grinderIssues(grinder).filter(({ code }) => code === 'off-rest');

const boxed = (lean: number): string[] =>
  Object.values(grinderPresets).flatMap((preset) =>
    grinderIssues({ ...preset, lean })
      .filter(({ code }) => code === 'platen-in-box')
      .map(({ path }) => path),
  );

/** Codes of what holds the fields of a preset together once some of them are changed. */
const codesOf = (over: (grinder: Grinder) => Partial<Grinder>): string[] => {
  const preset = grinderPresets['platen-50'];
  if (!preset) throw new Error('no preset');
  return grinderIssues({ ...preset, ...over(preset) }).map(({ code }) => code);
};

describe('limits of a grinder', () => {
  it('are met as they are stated, and not a hair beyond', () => {
    // v = pi D n / 60000: 100 mm at 2865 turns a minute is 15.0011 m/s.
    const speed = (Math.PI * 100 * 2865) / 60_000;
    const driven = (rating: number) => (grinder: Grinder) => ({
      drive: {
        ...grinder.drive,
        pulleyDiameter: 100,
        shaftSpeed: 2865,
        beltRating: rating,
        wheelRating: 40,
      },
    });
    expect(codesOf(driven(speed + 0.001))).not.toContain('too-fast');
    expect(codesOf(driven(speed - 0.001))).toContain('too-fast');
    const wheels = (grinder: Grinder) => {
      const { drive } = driven(40)(grinder);
      return { drive: { ...drive, wheelRating: speed - 0.001 } };
    };
    expect(codesOf(wheels)).toContain('too-fast');
  });

  it('tell of a belt that is 3 % off its path, and of none within', () => {
    const preset = grinderPresets['platen-50'];
    const [bare] = preset?.backings ?? [];
    const path = preset && bare && beltPath(preset, bare);
    const length = path?.ok ? path.value.length : NaN;
    const long = (share: number) => (grinder: Grinder) => ({
      belt: { ...grinder.belt, length: length / share },
    });
    for (const share of [1.029, 0.971]) expect(codesOf(long(share))).not.toContain('belt-length');
    for (const share of [1.031, 0.969]) expect(codesOf(long(share))).toContain('belt-length');
  });

  it('leave a rest no gap that a belt with its backing fills', () => {
    const stack = (grinder: Grinder, of: 'min' | 'max'): number =>
      Math[of](
        ...grinder.backings.flatMap(({ thickness }) =>
          grinder.belts.map((belt) => thickness + belt.thickness),
        ),
      );
    const at =
      (of: 'min' | 'max', more: number, travelY = 0) =>
      (grinder: Grinder) => {
        const { platen, rest } = grinder;
        if (rest.kind !== 'table' || platen.kind === 'none') throw new Error('another preset');
        const gap = stack(grinder, of) + platen.liner + more - travelY;
        return {
          rest: { ...rest, gap, travelY, travelZ: 50, pattern: { kind: 'edges' as const } },
        };
      };
    const told = (codes: readonly string[]) => codes.filter((code) => code.startsWith('gap-'));
    expect(told(codesOf(at('min', 0)))).toEqual(['gap-too-small']);
    expect(told(codesOf(at('min', 0.1)))).toEqual(['gap-for-some']);
    expect(told(codesOf(at('max', 0)))).toEqual(['gap-for-some']);
    expect(told(codesOf(at('max', 0.1)))).toEqual([]);
    // A rest that is drawn back along the floor makes room; one that is let down does not.
    expect(told(codesOf(at('max', 0.1, 0.5)))).toEqual([]);
  });
});

describe('the wheel in front', () => {
  it('is the one of its kind whose rim reaches farthest, not the one whose axis does', () => {
    const preset = grinderPresets['platen-50'];
    const [wheel] = preset?.wheels ?? [];
    if (!preset || !wheel) throw new Error('no wheel');
    const named = (id: string, over: Partial<Wheel>): Wheel => ({ ...wheel, id, ...over });
    const small = named('small', { role: 'idler', diameter: 20, centre: [-10, 0] });
    const large = named('large', { role: 'idler', diameter: 90, centre: [-20, 90] });
    const other = named('other', { role: 'drive', diameter: 300 });
    for (const wheels of [
      [small, large, other],
      [other, large, small],
    ])
      expect(frontWheel({ ...preset, wheels }, 'idler')?.id).toBe('large');
    expect(frontWheel({ ...preset, wheels: [other] }, 'idler')).toBeUndefined();
  });
});

describe('a keep-out box behind a platen', () => {
  it('is told of once the platen has been leaned into it', () => {
    expect(boxed(0)).toEqual([]);
    expect(boxed(2)).toEqual([]);
    expect(new Set(boxed(5))).toEqual(new Set(['keepOuts.0.goes']));
  });

  it('leans with the platen where that is said, as a body and in the drawing', () => {
    const preset = Object.values(grinderPresets).find(({ keepOuts }) => keepOuts.length > 0);
    if (!preset) throw new Error('no preset has a box');
    const [issue] = grinderIssues({ ...preset, lean: 5 }).filter(
      ({ code }) => code === 'platen-in-box',
    );
    const { path = '', value = '' } = issue?.mend ?? {};
    const leaning = withValue({ ...preset, lean: 5 }, path, value);
    expect(grinderIssues(leaning).map(({ code }) => code)).not.toContain('platen-in-box');

    // What leans as one keeps its distance: no lean is the reference.
    const gap = (grinder: Grinder): number => {
      const [belt] = grinder.belts;
      const [backing] = grinder.backings;
      const bodies =
        belt && backing && machineBodies(grinder, belt, backing, WORLD, createWorkshop());
      if (!bodies?.ok || !bodies.value.platen || !bodies.value.guards) throw new Error('no bodies');
      const found = clearance(bodies.value.platen, bodies.value.guards);
      if (!found.ok) throw new Error(found.issues[0]?.message);
      return found.value.state === 'beyond' ? found.value.beyond : found.value.gap;
    };
    expect(gap(leaning)).toBeCloseTo(gap(preset), 2);
    expect(gap({ ...preset, lean: 5 })).toBeLessThan(gap(preset) - 3);

    // The upper corner at the platen, turned by hand.
    const [box] = leaning.keepOuts;
    if (!box) throw new Error('no box');
    const [cos, sin] = [Math.cos(Math.PI / 36), Math.sin(Math.PI / 36)];
    const [y, z] = [box.max[1], box.max[2]];
    const corner = keepOutSide(box, 5)[2];
    expect(corner?.[0]).toBeCloseTo(cos * y - sin * z, 9);
    expect(corner?.[1]).toBeCloseTo(sin * y + cos * z, 9);
  });
});

describe('slots and holes that a smaller rest no longer holds', () => {
  const tables = Object.values(grinderPresets).filter(({ rest }) => rest.kind === 'table');

  it('come back onto it at the values that are named', () => {
    let mended = 0;
    for (const preset of tables) {
      let grinder = withValue(withValue(preset, 'rest.width', 90), 'rest.depth', 60);
      for (let i = 0; i < 20 && off(grinder).length > 0; i += 1)
        for (const { mend } of off(grinder)) {
          expect(mend?.path).toMatch(/^rest\.pattern\./);
          if (mend) grinder = withValue(grinder, mend.path, mend.value);
          mended += 1;
        }
      expect(off(grinder)).toEqual([]);
    }
    expect(mended).toBeGreaterThan(3);
  });
});
