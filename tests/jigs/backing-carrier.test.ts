import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { CheckResult, Fixture } from '../../src/family/index.ts';
import { place } from '../../src/geometry/frame.ts';
import { flatten } from '../../src/geometry/flatten.ts';
import { beltPath, faceDepth } from '../../src/grinder/belt-path.ts';

const valueOf = <T>(
  result: { ok: true; value: T } | { ok: false; issues: readonly { message: string }[] },
): T => {
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};

const example = (name: string): Design =>
  valueOf(openDesign(readFileSync(`jigs/backing-carrier/examples/${name}.jig.json`), registry));

const solve = (design: Design) => {
  const family = registry.families['backing-carrier'];
  if (!family) throw new Error('no backing carrier');
  return family.solve(design);
};

const withParameters = (design: Design, parameters: Record<string, string | number>): Design => ({
  ...design,
  fixture: {
    ...design.fixture,
    parameters: { ...design.fixture.parameters, ...parameters },
  },
});

const reading = (fixture: Fixture, key: string): number =>
  fixture.settings[0]?.readings.find((r) => r.key === key)?.value ?? NaN;

const fact = (fixture: Fixture, key: string): number =>
  fixture.facts.find((f) => f.key === key)?.value ?? NaN;

const failed = (fixture: Fixture): string[] =>
  valueOf(fixture.checks())
    .filter(({ passed }: CheckResult) => !passed)
    .map(({ id }) => id);

describe('what a carrier shifts', () => {
  // By hand: ribs 18 and leather 5 on a platen without liner, leather of 5 before: 23 - 5 = 18 mm,
  // and 23 mm against the bare platen; belt P400 is 0.7 thick.
  it('is ribs and sheet less the backing of the pass', () => {
    const fixture = valueOf(solve(example('leather-finish')));
    expect(reading(fixture, 'shift')).toBeCloseTo(18, 9);
    expect(reading(fixture, 'depth')).toBeCloseTo(23.7, 9);
    expect(fact(fixture, 'bare-P400')).toBeCloseTo(23, 9);
  });

  // A platen that leans by 5 degrees: the same, along the rest, over cos 5 deg.
  it('is longer along the rest where the platen leans', () => {
    const design = example('leather-leaning');
    const fixture = valueOf(solve(design));
    const { lean } = design.grinder;
    expect(fact(fixture, 'bare-P400')).toBeCloseTo(26 / Math.cos((lean * Math.PI) / 180), 9);
  });

  it('is what the grinder file gives once the stated backing is in it', () => {
    const design = example('radius-1200');
    const fixture = valueOf(solve(design));
    const { grinder } = design;
    const backing = {
      kind: 'radius',
      id: 'carrier',
      thickness: fact(fixture, 'backing'),
      radius: 1200,
    } as const;
    const belt = grinder.belts.find(({ id }) => id === 'P400');
    const before = grinder.backings.find(({ id }) => id === 'leather');
    if (!belt || !before) throw new Error('the example has changed');
    const shift = faceDepth(grinder, belt, backing) - faceDepth(grinder, belt, before);
    expect(reading(fixture, 'shift')).toBeCloseTo(shift, 9);
    const bare = { kind: 'none', id: 'bare', thickness: 0 } as const;
    const grown =
      valueOf(beltPath(grinder, backing)).length - valueOf(beltPath(grinder, bare)).length;
    expect(fact(fixture, 'path')).toBeCloseTo(grown, 6);
  });
});

describe('a carrier in place of the platen', () => {
  const design = example('leather-instead');
  const fixture = valueOf(solve(design));

  // By hand: ribs 22 and leather 5 stand on what carried a platen of 8: 19 mm before the bare face,
  // 14 mm before the leather of 5 on it.
  it('shifts by what it stands before the face of the platen that is off', () => {
    expect(reading(fixture, 'shift')).toBeCloseTo(14, 9);
    expect(fact(fixture, 'bare-P400')).toBeCloseTo(19, 9);
    expect(failed(fixture)).toEqual([]);
  });

  it('leaves a liner off with the platen, and counts the backing from it all the same', () => {
    const { platen } = design.grinder;
    if (platen.kind === 'none') throw new Error('the example has changed');
    const lined = { ...design, grinder: { ...design.grinder, platen: { ...platen, liner: 2 } } };
    const other = valueOf(solve(lined));
    expect(fact(other, 'backing')).toBeCloseTo(17, 9);
    expect(fact(other, 'bare-P400')).toBeCloseTo(17, 9);
  });

  // ISO 4032 M8: 13 across flats, 6.8 high (open table).
  it('holds nuts M8 in slots of its middle ribs', () => {
    const ribs = valueOf(fixture.parts()).filter(({ id }) => id.startsWith('rib'));
    expect(ribs.map(({ quantity }) => quantity)).toEqual([4, 4]);
    const outer = ribs.find(({ id }) => id === 'rib-slotted')?.layers[0]?.profile.outer;
    if (outer?.kind !== 'path') throw new Error('no rib');
    const inner = outer.vertices.filter(({ x, y }) => x > -4 && x < 12 && Math.abs(y) < 10);
    const heights = inner.map(({ y }) => y);
    expect(Math.max(...heights) - Math.min(...heights)).toBeCloseTo(13.4, 9);
    const depths = inner.map(({ x }) => x);
    expect(Math.max(...depths) - Math.min(...depths)).toBeGreaterThan(6.8);
  });

  it('says where the bolts may be, and how deep the ribs must be', () => {
    const codes = (parameters: Record<string, number>): string[] =>
      solve(withParameters(design, parameters)).issues.map(({ code }) => code);
    expect(codes({ boltLow: -20 })).toContain('bolt-at-rod');
    expect(codes({ boltHigh: 148 })).toContain('bolt-at-rod');
    expect(codes({ boltLow: 80, boltHigh: 90 })).toContain('bolts-close');
    expect(codes({ depth: 20 })).toContain('too-shallow');
  });
});

describe('the backing that a carrier asks to be stated', () => {
  it.each(['leather-finish', 'radius-1200', 'leather-instead'])(
    'of %s can be entered in the grinder file',
    (name) => {
      const design = example(name);
      const thickness = fact(valueOf(solve(design)), 'backing');
      const backings = [
        ...design.grinder.backings,
        { kind: 'leather', id: 'stated', thickness } as const,
      ];
      const grinder = { ...design.grinder, backings };
      const opened = openDesign(
        new TextEncoder().encode(JSON.stringify({ ...design, grinder })),
        registry,
      );
      expect(opened.issues.map(({ message }) => message)).toEqual([]);
    },
  );
});

describe('the finished convex face', () => {
  it('lies on its circle, read off the placed ribs', () => {
    const design = example('radius-1200');
    const fixture = valueOf(solve(design));
    const rib = valueOf(fixture.parts()).find(({ id }) => id === 'rib');
    const stands = fixture.place('').find(({ part }) => part === 'rib');
    const outer = rib?.layers[0]?.profile.outer;
    if (!outer || !stands) throw new Error('no rib');
    const { platen } = design.grinder;
    if (platen.kind === 'none') throw new Error('no platen');
    const points = flatten(outer, 0.001).map(([x, y]) => place(stands.frame, [x, y, 0]));
    const middle = (platen.bottom + platen.top) / 2;
    const face = points.filter(([, y, z]) => y > 10 && Math.abs(z - middle) < 80);
    expect(face.length).toBeGreaterThan(5);
    // Centre 1200 behind the foremost line, which stands 20 mm before the platen.
    for (const [, y, z] of face)
      expect(Math.hypot(y - (20 - 1200), z - middle)).toBeCloseTo(1200, 2);
  });

  // CRC circle segment: c = 23 / cos a with a from tan a = 1.4 / 23, R = 1200.7.
  it('hollows the bevel by the height of its segment', () => {
    const fixture = valueOf(solve(example('radius-1200')));
    const chord = Math.hypot(23, 1.4);
    const r = 1200.7;
    expect(fact(fixture, 'hollow-P400-left-Kitchen 210')).toBeCloseTo(
      r - Math.sqrt(r * r - (chord * chord) / 4),
      9,
    );
  });
});

describe('the checks of a carrier', () => {
  const sound = example('leather-finish');

  it.each([
    [
      'a keep-out at the cheeks',
      'clearance/cheeks/guards',
      (d: Design): Design => ({
        ...d,
        grinder: {
          ...d.grinder,
          keepOuts: [{ name: 'Post', min: [26, -20, 0], max: [60, 40, 40] }],
        },
      }),
    ],
    [
      'a rest without travel',
      'range/rest-travel',
      (d: Design): Design => ({
        ...d,
        grinder: { ...d.grinder, rest: { ...d.grinder.rest, travelY: 10 } },
      }),
    ],
    [
      'an arm with too little room',
      'range/take-up',
      (d: Design) => withParameters(d, { takeUp: 5 }),
    ],
    [
      'a sheet that is too soft',
      'range/roll',
      (d: Design) => withParameters(d, { modulus: 2, push: 150, softThickness: 10, tension: 0.5 }),
    ],
    [
      'a bevel off the end of the face',
      'range/contact/low',
      (d: Design) => withParameters(d, { contact: 10, endRadius: 4 }),
    ],
  ] as const)('notice %s', (_, id, change) => {
    const design = change(sound);
    const made =
      id === 'range/contact/low' && design.grinder.platen.kind !== 'none'
        ? {
            ...design,
            grinder: { ...design.grinder, platen: { ...design.grinder.platen, bottom: -5 } },
          }
        : design;
    expect(failed(valueOf(solve(made)))).toContain(id);
  });

  it('pass before anything is spoilt', () => {
    expect(failed(valueOf(solve(sound)))).toEqual([]);
  });
});

describe('a carrier that cannot be', () => {
  const codes = (design: Design): string[] => solve(design).issues.map(({ code }) => code);
  const sound = example('radius-1200');

  it('says why: ribs too shallow for the bolts, no flat platen, a backing of its name', () => {
    expect(codes(withParameters(sound, { depth: 12 }))).toContain('too-shallow');
    expect(codes(withParameters(sound, { contact: 300 }))).toContain('contact-off-platen');
    const { platen } = sound.grinder;
    if (platen.kind !== 'flat') throw new Error('the example has changed');
    const round = { ...sound.grinder, platen: { ...platen, kind: 'radius', radius: 800 } as const };
    expect(codes({ ...sound, grinder: round })).toContain('platen-not-flat');
    const named = { kind: 'leather', id: 'carrier', thickness: 3 } as const;
    const backings = [...sound.grinder.backings, named];
    expect(codes({ ...sound, grinder: { ...sound.grinder, backings } })).toContain('backing-named');
  });
});

describe('how a convex face is tried', () => {
  // On an arc of radius R a straight edge over two feelers at a to either side of the middle touches
  // it where they are R - sqrt(R^2 - a^2) thick: 1200 - sqrt(1200^2 - 50^2) = 1.0421 mm.
  it('is by feelers as thick as the finished rib falls back there', () => {
    const fixture = valueOf(solve(example('radius-1200')));
    const rib = valueOf(fixture.parts()).find(({ id }) => id === 'rib');
    const outer = rib?.layers[0]?.profile.outer;
    if (!rib || !outer) throw new Error('no rib');
    const said = [...rib.notes, ...fixture.assembly].join(' ');
    expect(said).toContain('50 mm from its middle it falls back by 1.04 mm');
    expect(said).toContain('feelers of 1.04 mm across it 50 mm above and below its middle');
    expect(said).not.toMatch(/template/);
    const points = flatten(outer, 1e-4);
    const front = Math.max(...points.map(([x]) => x));
    // The foremost place of the front is its middle.
    const middle = points.filter(([x]) => x > front - 1e-3).map(([, y]) => y);
    const at = (Math.min(...middle) + Math.max(...middle)) / 2;
    const falls = [-50, 50].map((side) => {
      const over = points.flatMap((p, i) => {
        const q = points[(i + 1) % points.length] ?? p;
        const share = (at + side - p[1]) / (q[1] - p[1]);
        return share >= 0 && share < 1 ? [p[0] + share * (q[0] - p[0])] : [];
      });
      return front - Math.max(...over);
    });
    // What the middle is off by cancels over the two sides.
    expect(((falls[0] ?? NaN) + (falls[1] ?? NaN)) / 2).toBeCloseTo(1.0421, 3);
  });
});
