import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { edgeRest } from '../../jigs/edge-rest/index.ts';
import { registry } from '../../jigs/registry.ts';
import { spineRest } from '../../jigs/spine-rest/index.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Part } from '../../src/family/index.ts';
import { valueOf } from '../family/examples.ts';

const opened = (file: string): Design => valueOf(openDesign(readFileSync(file), registry));
const slicer = opened('jigs/edge-rest/examples/slicer-200-hollow.jig.json');
const kitchen = opened('jigs/spine-rest/examples/kitchen-210.jig.json');

const withParameters = (design: Design, parameters: Design['fixture']['parameters']): Design => ({
  ...design,
  fixture: { ...design.fixture, parameters: { ...design.fixture.parameters, ...parameters } },
});

const codes = (design: Design): string[] => edgeRest.solve(design).issues.map(({ code }) => code);

/** A part without the holes by which it is mounted on this or that rest. */
const unmounted = (parts: readonly Part[], id: string) => {
  const part = parts.find((p) => p.id === id);
  const holes = part && 'holes' in part ? part.holes : [];
  return {
    size: part?.layers.map(({ from, to, profile: { outer } }) => ({ from, to, outer })),
    holes: holes.filter((hole) => !hole.id.startsWith('mount')),
  };
};

describe('pads beside the belt', () => {
  it('are said to hold a blade on one side alone, unless a ricasso reaches the other pad', () => {
    const side = opened('jigs/edge-rest/examples/side-165-leaning.jig.json');
    expect(codes(slicer)).toContain('one-pad');
    expect(codes(side)).not.toContain('one-pad');
    const bare = { ...side, blades: side.blades.map((blade) => ({ ...blade, ricasso: 0 })) };
    expect(codes(bare)).toContain('one-pad');
  });
});

describe('the stop collar', () => {
  type Blade = Design['blades'][number];
  const changed = (name: string, change: (blade: Blade) => Blade): Design => {
    const design = opened(`jigs/edge-rest/examples/${name}.jig.json`);
    return { ...design, blades: design.blades.map(change) };
  };
  const lower = (blade: Blade): Blade =>
    blade.outline.kind === 'dimensions'
      ? { ...blade, outline: { ...blade.outline, heelHeight: 24, bellyHeight: 24 } }
      : blade;
  const thicker = (blade: Blade): Blade => ({
    ...blade,
    thickness: [{ u: 0, t: 8 }],
    tang: { ...blade.tang, thickness: 8 },
  });

  // Distances of the finished solids.
  it.each([
    ['near to the edge', changed('herb-110-small-wheel', lower)],
    ['thick', changed('side-165-leaning', thicker)],
  ])('has its room where the tang is %s', (_, design) => {
    const checks = valueOf(valueOf(edgeRest.solve(design)).checks('near'));
    const collar = checks.filter(({ id }) => /^(clearance|contact)\/collar\//.test(id));
    expect(collar.length).toBeGreaterThan(8);
    expect(collar.filter(({ passed }) => !passed)).toEqual([]);
  });
});

describe('an edge rest beside a spine rest', () => {
  it('has the same base, packer, feed and knob, given the travels on its sheet', () => {
    const spine = valueOf(spineRest.solve(withParameters(kitchen, { wing: 52, stepWing: 20 })));
    const fact = (key: string): number => spine.facts.find((f) => f.key === key)?.value ?? NaN;
    const edge = valueOf(
      edgeRest.solve(
        withParameters(slicer, {
          builtTravel: fact('travel'),
          builtNoseTravel: fact('noseTravel'),
        }),
      ),
    );
    const [ours, theirs] = [valueOf(edge.parts()), valueOf(spine.parts())];
    for (const id of ['base', 'packer', 'feed-bracket', 'feed-lug', 'knob']) {
      const [one, other] = [unmounted(ours, id), unmounted(theirs, id)];
      expect(one.holes.length, id).toBe(other.holes.length);
      const numbers = (value: unknown): number[] =>
        typeof value === 'number'
          ? [value]
          : typeof value === 'object' && value !== null
            ? Object.values(value).flatMap(numbers)
            : [];
      const [a, b] = [numbers(one), numbers(other)];
      expect(a.length, id).toBe(b.length);
      a.forEach((value, i) => expect(value, id).toBeCloseTo(b[i] ?? NaN, 6));
    }
    expect(valueOf(edge.checks()).filter(({ passed }) => !passed)).toEqual([]);
  }, 60_000);

  it('says so when the travels of a built base are too short', () => {
    expect(codes(withParameters(slicer, { builtTravel: 1 }))).toContain('built-too-short');
  });
});

describe('hollows measured on finished, settled solids', () => {
  it('have the depth, limits and web that were promised, within 0.01 mm', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const wish = fc.record({
      depth: between(0.15, 0.35),
      centre: between(17, 20),
      angle: fc.option(between(2.5, 4)),
      edge: between(0.4, 0.7),
      lip: fc.constantFrom('strip', 'pads'),
      height: between(-6, 6),
    });
    let measured = 0;
    fc.assert(
      fc.property(wish, ({ depth, centre, angle, edge, lip, height }) => {
        const hollow = {
          kind: 'hollow' as const,
          depth,
          centre,
          ...(angle === null ? {} : { angle }),
        };
        const design: Design = {
          ...withParameters(slicer, { lip, lipThickness: 0.5 }),
          blades: slicer.blades.map((blade) => ({
            ...blade,
            edge: { ...blade.edge, wanted: edge },
            bevels: { left: hollow, right: hollow },
          })),
          grinder: {
            ...slicer.grinder,
            wheels: slicer.grinder.wheels.map((wheel) =>
              wheel.role === 'contact'
                ? { ...wheel, centre: [wheel.centre[0], wheel.centre[1] + height] as const }
                : wheel,
            ) as Design['grinder']['wheels'],
          },
          sequence: [{ belt: 'P120', backing: 'bare', edge, steeper: 0 }],
        };
        const solved = edgeRest.solve(design);
        fc.pre(solved.ok);
        if (!solved.ok) return;
        const { lines } = solved.value;
        for (const m of valueOf(solved.value.measured())) {
          if (m.certainty.kind !== 'exact') continue;
          const place = lines
            .find(({ side }) => side === m.side)
            ?.places.find(({ u }) => u === m.u);
          expect(Math.abs(m.bevelHeight - (place?.bevelHeight ?? NaN))).toBeLessThan(0.01);
          expect(Math.abs(m.angle - (place?.angle ?? NaN))).toBeLessThan(0.01);
          const found = m as typeof m & { depth: number; lower: number };
          expect(Math.abs(found.depth - depth)).toBeLessThan(0.01);
          const chord = Math.sqrt(8 * 101.1 * depth - 4 * depth * depth);
          const shoulder =
            angle === null ? 0 : (1.75 - edge / 2) / Math.sin((angle * Math.PI) / 180);
          if (angle === null || centre + chord / 2 < shoulder)
            expect(Math.abs(found.lower - centre + chord / 2)).toBeLessThan(0.01);
          measured += 1;
        }
      }),
      { numRuns: 5, seed: 8, endOnFailure: true },
    );
    expect(measured).toBeGreaterThan(8);
  }, 120_000);
});

describe('blades that stand unevenly on the lip', () => {
  // Abrasive radius 100.7 with P400 on a wheel of 200: w = 2 sqrt(2 R d - d^2), limits c -/+ w/2.
  const half = Math.sqrt(2 * 100.7 * 0.3 - 0.3 ** 2);
  const last = { ...slicer, sequence: slicer.sequence.slice(-1) };
  const left = slicer.blades.map((blade) => ({
    ...blade,
    bevels: { ...blade.bevels, right: { kind: 'none' as const } },
  }));

  it.each([
    ['a bevel and its hollow on one side alone', { ...last, blades: left }, ['left']],
    [
      'a machine that leans back, where the flank meets the lip above the edge',
      { ...last, grinder: { ...slicer.grinder, lean: 4 } },
      ['left', 'right'],
    ],
  ] as const)('are hollowed where they should be: %s', (_, design, sides) => {
    const fixture = valueOf(edgeRest.solve(design));
    const measured = valueOf(fixture.measured());
    expect([...new Set(measured.map(({ side }) => side))]).toEqual(sides);
    for (const { bevelHeight, angle } of measured) {
      expect(Math.abs(bevelHeight - (18 + half))).toBeLessThan(0.01);
      expect(angle).toBeCloseTo(3.2, 3);
    }
  });

  it('stand square at the plunge stop, where one pad alone meets the blade', () => {
    const fixture = valueOf(edgeRest.solve({ ...slicer, grinder: { ...slicer.grinder, lean: 4 } }));
    const [first] = fixture.poses('1-left', 'Slicer 200');
    expect(Math.abs(first?.frame.x[1] ?? NaN)).toBeLessThan(1e-6);
  });
});

describe('an edge rest that cannot be built', () => {
  it('names the parameter', () => {
    expect(codes(withParameters(slicer, { wear: 2 }))).toContain('wear-too-thin');
    // ISO 10642: a countersunk head M4 is 2.48 mm high; 0.3 mm of metal over it (common practice).
    expect(codes(withParameters(slicer, { wear: 2.7 }))).toContain('wear-too-thin');
    expect(codes(withParameters(slicer, { wear: 2.8 }))).not.toContain('wear-too-thin');
    expect(codes(withParameters(slicer, { wheel: 'idler' }))).toContain('no-wheel');
    expect(codes(withParameters(slicer, { noseGap: 0.6 }))).toContain('gap-at-wheel');
    expect(codes(withParameters(slicer, { stepWing: 12 }))).toContain('pads-too-short');
    expect(codes(withParameters(slicer, { lip: 'strip', lipThickness: 2 }))).toContain(
      'lip-too-thick',
    );
    const withRicasso = {
      ...slicer,
      blades: slicer.blades.map((blade) => ({ ...blade, ricasso: 12 })),
    };
    expect(codes(withRicasso)).toContain('ricasso-on-seat');
  });
});
