import { describe, expect, it } from 'vitest';
import { solve } from '../../jigs/spine-rest/solve.ts';
import { lineAbove, lineBelow } from '../../jigs/shared/pose/support-line.ts';
import type { Design } from '../../src/document/schema.ts';
import { audit } from '../../src/model/audit.ts';
import { meshOf } from '../../src/model/solid.ts';
import { padHeights, padReaches } from '../../jigs/spine-rest/pads.ts';
import { examplesOf, valueOf } from '../family/examples.ts';
import { anyDesign, random, straightDesign } from './spine-rest-designs.ts';

describe('what the finished blade shows', () => {
  for (const seed of [1, 2, 3, 4]) {
    it(`is what was promised, on a straight blade of even stock (seed ${String(seed)})`, () => {
      const fixture = valueOf(solve(straightDesign(seed)));
      const near = valueOf(fixture.measured()).filter(({ u }) => u < 130);
      expect(near.length).toBe(4);
      for (const m of near) {
        const line = fixture.lines.find(({ side }) => side === m.side);
        const place = line?.places.find(({ u }) => Math.abs(u - m.u) < 1e-6);
        expect(m.certainty.kind).toBe('exact');
        expect(Math.abs(m.angle - (place?.angle ?? NaN))).toBeLessThan(0.01);
        expect(Math.abs(m.bevelHeight - (place?.bevelHeight ?? NaN))).toBeLessThan(0.01);
        const stop = fixture.settings.at(-1)?.edgeStop ?? NaN;
        expect(Math.abs(m.edgeThickness - stop)).toBeLessThan(0.01);
      }
    }, 120_000);
  }
});

describe('the pads of a family', () => {
  it('stand below the edge wherever the sheet sends them', () => {
    for (const example of examplesOf('spine-rest')) {
      const fixture = valueOf(solve(example.design));
      const { plan, v } = valueOf(fixture.question());
      const names = example.design.blades.map(({ name }) => name);
      const heights = padHeights(plan, names, v);
      // Rounded up it would come nearer to the edge than the margin.
      expect(heights[0]).toBeLessThanOrEqual(plan.pushHeight + 1e-9);
      expect(heights[0]).toBeGreaterThan(plan.pushHeight - 0.1 - 1e-9);
      for (const blade of names) {
        const reaches = padReaches(plan, blade, heights, v.padMargin);
        expect(reaches.length).toBeGreaterThan(1);
        for (const { height, to } of reaches) {
          expect(to).toBeGreaterThan(0);
          // The finished section's height, tilted by its own angle: apart from the solver's pose.
          for (const line of fixture.lines.filter((l) => l.blade === blade))
            for (const place of line.places.filter(({ u }) => u > 0 && u <= to)) {
              // 0.6: heights are to the tenth, and the blade stands on a corner, not its midplane.
              const tilt = ((place.angle + example.design.grinder.lean) * Math.PI) / 180;
              expect(place.height * Math.cos(tilt)).toBeGreaterThan(height + v.padMargin - 0.6);
            }
        }
      }
    }
  });
});

describe('the washers of the nose', () => {
  it.each([
    ['thick stock', 1.5, 23],
    ['a low bevel', 1, 12],
  ])('stand behind a blade that swings beyond the step, also of %s', (_, stock, height) => {
    const [kitchen] = examplesOf('spine-rest').filter(({ file }) => file.startsWith('kitchen-210'));
    if (kitchen === undefined) throw new Error('no example');
    const bevel = { kind: 'height', height } as const;
    const [blade] = kitchen.design.blades.map((one) => ({
      ...one,
      thickness: one.thickness.map(({ u, t }) => ({ u, t: t * stock })),
      bevels: { left: bevel, right: bevel },
    }));
    const fixture = valueOf(solve({ ...kitchen.design, blades: blade ? [blade] : [] }));
    const found = valueOf(fixture.checks('near')).find(({ id }) => id === 'clearance/blade/base');
    expect(found?.passed, found?.message).toBe(true);
  });
});

describe('a spine rest', () => {
  const kitchenWith = (change: (design: Design) => Design): Design => {
    const [kitchen] = examplesOf('spine-rest').filter(({ file }) => file.startsWith('kitchen-210'));
    if (kitchen === undefined) throw new Error('no example');
    const { design } = kitchen;
    const edited = change({ ...design, blades: design.blades.slice(0, 1) });
    return {
      ...edited,
      // The line wanders more or less; what stands where is looked at here.
      blades: edited.blades.map((one) => ({ ...one, line: { ...one.line, allowed: 20 } })),
    };
  };
  const ground = (design: Design, height: number): Design => {
    const bevel = { kind: 'height', height } as const;
    const bevels = { left: bevel, right: bevel };
    return { ...design, blades: design.blades.map((one) => ({ ...one, bevels })) };
  };
  const gap = (design: Design, noseGap: number): Design => ({
    ...design,
    fixture: { ...design.fixture, parameters: { ...design.fixture.parameters, noseGap } },
  });

  // Distances of the finished solids.
  it.each([
    ['a platen that leans towards the maker', 'lean', -2, 23],
    ['a thick base', 'base', 10, 23],
    ['a bevel as high as its setting can be', 'high', 0.93, 27],
  ])('passes its checks with %s', (_, what, value, height) => {
    const design = kitchenWith((one) => {
      if (what === 'lean') return { ...one, grinder: { ...one.grinder, lean: value } };
      if (what === 'high') return gap(ground(one, height), value);
      const parameters = { ...one.fixture.parameters, base: value };
      return { ...one, fixture: { ...one.fixture, parameters } };
    });
    const checks = valueOf(valueOf(solve(design)).checks('near'));
    expect(checks.filter(({ passed }) => !passed)).toEqual([]);
  });
});

describe('designs with any parameters', () => {
  it('build sound parts or say what is wrong and what mends it', () => {
    let built = 0;
    let refused = 0;
    for (let seed = 1; seed <= 16; seed += 1) {
      const result = solve(anyDesign(seed));
      const parts = result.ok ? result.value.parts() : result;
      if (!parts.ok) {
        refused += 1;
        const errors = parts.issues.filter(({ severity }) => severity === 'error');
        expect(errors.length).toBeGreaterThan(0);
        for (const { message, fix } of errors) {
          expect(message).not.toMatch(/NaN|undefined|Infinity/);
          expect(fix.length).toBeGreaterThan(10);
        }
        continue;
      }
      built += 1;
      for (const { id, layers } of parts.value)
        expect([seed, id, audit(valueOf(meshOf(layers))).sound]).toEqual([seed, id, true]);
    }
    expect(built).toBeGreaterThan(1);
    expect(refused).toBeGreaterThan(1);
  }, 120_000);
});

describe('a blade with a square end and a tang in line with its spine', () => {
  const [kitchen] = examplesOf('spine-rest').filter(({ file }) => file.startsWith('kitchen'));
  /** Invented, 166 mm long with a front end rounded by about 10 mm, as a file would bring it. */
  const square = (drop: number): Design => {
    const { design } = kitchen ?? { design: straightDesign(1) };
    const [blade] = design.blades;
    if (blade === undefined) throw new Error('no blade');
    const { parameters } = design.fixture;
    return {
      ...design,
      // As its check asks: the pad a little lower than on the kitchen blades.
      fixture: { ...design.fixture, parameters: { ...parameters, padMargin: 2.5 } },
      blades: [
        {
          ...blade,
          outline: {
            kind: 'curves',
            spine: [[0, 0], [155, 0], [160, 1.2], [164, 5], [166, 14]], // prettier-ignore
            edge: [[0, 48], [80, 48], [140, 47], [164, 44], [165.6, 42], [166, 14]], // prettier-ignore
          },
          tang: { ...blade.tang, drop },
          line: { ...blade.line, allowed: 3 },
        },
      ],
    };
  };

  it('stands on its straight spine over the whole stroke, is told so, and passes', () => {
    const result = solve(square(0));
    const [corner] = result.issues.filter(({ code }) => code === 'spine-corner');
    expect(corner?.severity).toBe('note');
    const fixture = valueOf(result);
    const { poses } = valueOf(fixture.question());
    for (const { frame } of poses('1-left', 'Kitchen 210'))
      expect(Math.abs(frame.x[2])).toBeLessThan(1e-6);
    const failed = valueOf(fixture.checks()).filter(({ passed }) => !passed);
    expect(failed.map(({ message }) => message)).toEqual([]);
  });

  it('fails where its tang stands above the spine and so in the seat', () => {
    const ids = valueOf(valueOf(solve(square(-0.5))).checks()).flatMap(({ id, passed }) =>
      passed ? [] : [id],
    );
    expect(ids).toContain('clearance/tang/nose');
  });
});

describe('the line a ledge comes to rest on', () => {
  // Brute force: every line through two points that has no point below it, highest at the load.
  const brute = (xs: readonly number[], ys: readonly number[], load: number): number => {
    let best = -Infinity;
    xs.forEach((x, i) =>
      xs.forEach((x2, k) => {
        if (x2 <= x) return;
        const b = ((ys[k] ?? 0) - (ys[i] ?? 0)) / (x2 - x);
        const a = (ys[i] ?? 0) - b * x;
        const under = xs.every((x3, j) => a + b * x3 <= (ys[j] ?? 0) + 1e-9);
        if (under && x <= load && load <= x2) best = Math.max(best, a + b * load);
      }),
    );
    return best;
  };

  it('is the highest of all lines below the points, at the load', () => {
    const next = random(7);
    for (let round = 0; round < 50; round += 1) {
      const xs = [-50, 50, ...Array.from({ length: 12 }, () => 100 * next() - 50)];
      const ys = xs.map((x) => 0.002 * x * x + next());
      const load = 40 * next() - 20;
      const below = lineBelow(xs, ys, load);
      expect((below?.a ?? NaN) + (below?.b ?? NaN) * load).toBeCloseTo(brute(xs, ys, load), 9);
      const above = lineAbove(
        xs,
        ys.map((y) => -y),
        load,
      );
      expect(above?.a).toBeCloseTo(-(below?.a ?? NaN), 12);
    }
  });
});
