import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import { planSpineRest, settledPose, type SpineRestPlan } from '../../src/grind/index.ts';
import { bar, grind, mirror } from './brute.ts';
import { grinder, input, kitchen210, parameters, strip } from './samples.ts';

const planOf = (over: Parameters<typeof input>[0] = {}): SpineRestPlan => {
  const result = planSpineRest(input(over));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const codes = (over: Parameters<typeof input>[0]): string[] =>
  planSpineRest(input(over)).issues.map(({ code }) => code);

/** A kitchen blade with a belly, a falling tip and distal taper. */
const kitchen: Blade = strip({
  name: 'Kitchen',
  outline: kitchen210,
  thickness: [
    { u: 0, t: 3 },
    { u: 210, t: 1.6 },
  ],
  spineRadius: 0.3,
});

describe('a plan for the spine rest', () => {
  it('sets the worked example: T 3, e 0.2, H 50 at 3.5 degrees', () => {
    const plan = planOf();
    const last = plan.settings.filter(({ step }) => step === 2);
    expect(last.map(({ side }) => side)).toEqual(['left', 'right']);
    for (const setting of last) {
      expect(setting.setoff).toBeCloseTo(4.6494, 4);
      expect(setting.angle).toBeCloseTo(3.5, 9);
      expect(setting.bevelHeight).toBeCloseTo(22.89, 2);
      expect(setting.cornerDistance).toBeCloseTo(1.655, 3);
      expect(setting.edgeSide).toBeCloseTo(0.1, 12);
    }
    // Side two first finds the edge of the belt before on side one.
    expect(last[0]?.edgeStop).toBeCloseTo(0.3, 9);
    expect(last[1]?.edgeStop).toBeCloseTo(0.2, 9);
    for (const line of plan.lines) {
      expect(line.greatestDeviation).toBeLessThan(1e-6);
      expect(line.places.every(({ certainty }) => certainty.kind === 'exact')).toBe(true);
    }
    for (const { degrees, bevelHeight } of plan.sensitivity) {
      expect(degrees).toBeCloseTo(0.115, 3);
      expect(bevelHeight).toBeCloseTo(0.75, 1);
    }
  });

  it('sets side two nearer where side one took the corner that meets the step', () => {
    const blade = strip(
      {
        bevels: { left: { kind: 'angle', angle: 2 }, right: { kind: 'angle', angle: 2 } },
        edge: { asHeatTreated: 3, wanted: 0.2, shareLeft: 0.5 },
      },
      150,
      30,
    );
    const sequence = [{ belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 }];
    const [one, two] = planOf({ blades: [blade], sequence }).settings;
    expect(one?.setoff).toBeCloseTo(2.646, 3);
    expect(two?.setoff).toBeCloseTo(2.294, 3);
    expect(one?.bevelHeight).toBe(30);
    expect(one?.angle).toBeCloseTo(2, 9);
  });

  it('carries every cut on: a whole sequence as brute force grinds it, belt by belt', () => {
    for (const lean of [0, 2.5]) {
      const blade = strip({
        thickness: [{ u: 0, t: 2.6 }],
        edge: { asHeatTreated: 2.6, wanted: 0.2, shareLeft: 0.4 },
        bevels: { left: { kind: 'angle', angle: 1.6 }, right: { kind: 'angle', angle: 2.4 } },
        spineRadius: 0.2,
      });
      const plan = planOf({ blades: [blade], grinder: grinder({ lean }) });
      // Right of the midplane is -w, the belt's side in the brute force.
      let points = bar(2.6, 50, 0.2);
      for (const setting of plan.settings) {
        const turned = setting.side === 'left' ? mirror(points) : points;
        const cut = grind(turned, 50, setting.setoff, setting.edgeSide, lean);
        points = setting.side === 'left' ? mirror(cut.points) : cut.points;
        expect(Math.abs(cut.angle - setting.angle)).toBeLessThan(1e-3);
        const pose = settledPose(setting, 'Strip', 70);
        expect(Math.abs((pose?.seating.tilt ?? 0) - cut.tilt)).toBeLessThan(1e-3);
        expect(Math.abs((pose?.seating.origin[0] ?? 0) - cut.dy)).toBeLessThan(1e-4);
        expect(Math.abs((pose?.seating.origin[1] ?? 0) - cut.dz)).toBeLessThan(1e-4);
      }
      const widths = points.filter(([, v]) => v > 50 - 1e-9).map(([w]) => w);
      expect(Math.max(...widths) - Math.min(...widths)).toBeCloseTo(0.2, 4);
    }
  });

  it('removes the metal that the sections lose, over the length', () => {
    const blade = strip({ edge: { asHeatTreated: 3, wanted: 0.2, shareLeft: 0.5 } });
    const plan = planOf({ blades: [blade] });
    const total = plan.settings.reduce((sum, { blades }) => sum + (blades[0]?.volume ?? 0), 0);
    // Two triangles: (T/2 - e) high over b, and 150 long.
    const rise = 1.4;
    const expected = 150 * rise * (rise / Math.tan((3.5 * Math.PI) / 180));
    expect(total / expected).toBeCloseTo(1, 6);
  });

  it('lets a blade lean on its stroke as far as the first place under the belt allows', () => {
    for (const lean of [0, 2.5]) {
      const plan = planOf({ blades: [kitchen], grinder: grinder({ lean }) });
      // Half of a belt 50 mm wide from the plunge stop at 0, to 3 mm of blade left on it.
      const [from, to] = [25, 210 - 3 + 25];
      for (const { blades } of plan.settings)
        for (const { places } of blades)
          for (const { u, strokeTilt } of places) {
            const middle = Math.min(to, Math.max(from, u));
            const under = places.filter((place) => Math.abs(place.u - middle) <= 25 + 1e-9);
            const least = Math.min(...under.map(({ seating }) => seating.angle));
            expect(strokeTilt).toBeCloseTo(least + lean, 9);
          }
    }
  });

  it('is the same on both sides of a symmetric blade', () => {
    const [left, right] = planOf({ blades: [kitchen] }).lines;
    expect(left?.places.length).toBeGreaterThan(60);
    left?.places.forEach((place, i) => {
      expect(right?.places[i]?.bevelHeight).toBeCloseTo(place.bevelHeight, 6);
    });
  });

  it('finds a setoff from which every other deviates more', () => {
    const blades = [kitchen, strip({ name: 'Strip', line: { follow: 'edge', allowed: 5 } })];
    const sequence = [{ belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 }];
    const best = planOf({ blades, sequence });
    const worst = (plan: SpineRestPlan): number =>
      Math.max(...plan.lines.map(({ greatestDeviation }) => greatestDeviation));
    // A wish a little steeper or flatter, met at its place, moves the setoff away from the best.
    for (const angle of [3.2, 3.35, 3.45, 3.55, 3.65, 3.8]) {
      const wish = { kind: 'angle', angle } as const;
      const asked = blades.map((blade) => ({ ...blade, bevels: { left: wish, right: wish } }));
      const place = { ...parameters, aim: 'place' as const };
      const moved = planOf({ blades: asked, sequence, parameters: place });
      const off = Math.max(
        ...best.lines.map((line, i) =>
          Math.max(
            ...line.places.map(({ wanted, steers }, k) => {
              const bevel = moved.lines[i]?.places[k]?.bevelHeight ?? 0;
              return steers ? Math.abs(bevel - wanted) : 0;
            }),
          ),
        ),
      );
      expect(off).toBeGreaterThan(worst(best) - 0.02);
    }
  });

  it('keeps b / H nearly even along constant T: 0.458 to 0.451 for H 60 to 20', () => {
    const height = (h: number) => strip({ name: `H${h}` }, 150, h);
    const wish = { kind: 'angle', angle: 2.917 } as const;
    const blades = [60, 20].map((h) => ({
      ...height(h),
      bevels: { left: wish, right: wish },
      line: { follow: 'share' as const, allowed: 5 },
    }));
    const plan = planOf({ blades, parameters: { ...parameters, aim: 'place' } });
    const shares = plan.lines
      .filter(({ side }) => side === 'left')
      .map(({ places }) => (places[10]?.bevelHeight ?? 0) / (places[10]?.height ?? 1));
    expect(shares[0]).toBeCloseTo(0.458, 3);
    expect(shares[1]).toBeCloseTo(0.451, 2);
  });
});

describe('the dial of a plan', () => {
  it('turns by belt and backing as by the setoff: everything counts to the abrasive face', () => {
    for (const lean of [0, 3]) {
      const sequence = [
        { belt: 'coarse', backing: 'bare', edge: 0.3, steeper: 0 },
        { belt: 'fine', backing: 'leather', edge: 0.2, steeper: 0 },
      ];
      const plan = planOf({ sequence, grinder: grinder({ lean }) });
      const c = Math.cos((lean * Math.PI) / 180);
      const [first, , third] = plan.settings;
      const change = third?.dial;
      expect(change?.beltChange).toBeCloseTo((0.9 - 1.2) / c, 9);
      expect(change?.backingChange).toBeCloseTo(5 / c, 9);
      expect(change?.setoffChange).toBeCloseTo(
        (third?.setoff ?? 0) - (plan.settings[1]?.setoff ?? 0),
        9,
      );
      const moved = (change?.position ?? 0) - (first?.dial.position ?? 0);
      expect(change?.turnsFromZero).toBeCloseTo(moved, 9);
      expect(change?.position).toBeCloseTo(
        (third?.setoff ?? 0) + 5.9 / c - 16 * Math.tan((lean * Math.PI) / 180),
        9,
      );
    }
  });

  it('shifts by exactly the thickness a belt gains, and leaves the setoff alone', () => {
    const worn = planOf();
    const { belts } = grinder();
    const thicker = belts.map((belt) => ({ ...belt, thickness: belt.thickness + 0.4 }));
    const fresh = planOf({ grinder: grinder({ belts: thicker }) });
    worn.settings.forEach((setting, i) => {
      expect(fresh.settings[i]?.setoff).toBeCloseTo(setting.setoff, 12);
      const shift = (fresh.settings[i]?.dial.position ?? 0) - setting.dial.position;
      expect(shift).toBeCloseTo(0.4, 9);
    });
  });

  it('reads whole divisions whose rest is stated', () => {
    for (const { dial } of planOf({ blades: [kitchen] }).settings) {
      expect(Number.isInteger(dial.division) && dial.division >= 0 && dial.division < 50).toBe(
        true,
      );
      const turns = Math.floor(dial.turnsFromZero + 0.5 / 50 + 1e-12);
      const read = turns + dial.division / 50;
      expect(dial.turnsFromZero - read - dial.rounding).toBeCloseTo(0, 9);
      expect(Math.abs(dial.rounding)).toBeLessThanOrEqual(0.01 + 1e-12);
    }
  });

  it('stands the face back by the stack: 16 mm at 2 degrees is 0.56 mm', () => {
    expect(planOf({ grinder: grinder({ lean: 2 }) }).stackShift).toBeCloseTo(0.56, 2);
  });
});

describe('what a plan warns of and refuses', () => {
  it('first touches the edge with a steeper plane, the shoulder with a flatter one', () => {
    const [steep, , flat] = planOf({
      sequence: [
        { belt: 'coarse', backing: 'bare', edge: 0.5, steeper: 0.6 },
        { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
      ],
    }).settings;
    expect(steep?.firstContact).toMatchObject({ at: 'edge', seated: false });
    expect(flat?.firstContact).toMatchObject({ at: 'shoulder', seated: true });
  });

  it('warns of a pass flatter than the finish, which cuts into its shoulder', () => {
    const { belts } = grinder();
    expect(belts.length).toBe(2);
    const sequence = [
      { belt: 'coarse', backing: 'bare', edge: 0.22, steeper: 0 },
      { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
    ];
    expect(codes({ sequence })).toContain('undercuts');
    const early = [{ belt: 'coarse', backing: 'bare', edge: 0.4, steeper: 0.2 }];
    expect(codes({ sequence: [...early, ...sequence.slice(1)] })).not.toContain('undercuts');
  });

  it('warns of a line beyond what is allowed', () => {
    const blade = { ...kitchen, line: { follow: 'edge' as const, allowed: 0.5 } };
    expect(codes({ blades: [blade] })).toContain('off-line');
  });

  it.each<[string, Parameters<typeof input>[0]]>([
    ['no-blades', { blades: [] }],
    ['no-sequence', { sequence: [] }],
    ['no-platen', { grinder: grinder({ platen: { kind: 'none' } }) }],
    ['unknown-belt', { sequence: [{ belt: 'x', backing: 'bare', edge: 0.2, steeper: 0 }] }],
    ['unknown-backing', { sequence: [{ belt: 'fine', backing: 'x', edge: 0.2, steeper: 0 }] }],
    [
      'hollow-on-platen',
      {
        blades: [
          strip({
            bevels: {
              left: { kind: 'hollow', depth: 0.3, centre: 20 },
              right: { kind: 'angle', angle: 3 },
            },
          }),
        ],
      },
    ],
    [
      'nothing-ground',
      { blades: [strip({ bevels: { left: { kind: 'none' }, right: { kind: 'none' } } })] },
    ],
    ['blade-lifts', { grinder: grinder({ belt: { ...grinder().belt, direction: 'up' } }) }],
    ['angle-out-of-reach', { grinder: grinder({ lean: -6 }) }],
  ])('refuses with %s', (code, over) => {
    const result = planSpineRest(input(over));
    expect(result.ok).toBe(false);
    const issue = result.issues.find((one) => one.code === code);
    expect(issue?.severity).toBe('error');
    expect(issue?.message.length).toBeGreaterThan(20);
    expect(issue?.fix.length).toBeGreaterThan(10);
  });

  it('leaves one side alone', () => {
    const blade = strip({ bevels: { left: { kind: 'none' }, right: { kind: 'angle', angle: 6 } } });
    const plan = planOf({ blades: [blade] });
    expect(plan.settings.every(({ side }) => side === 'right')).toBe(true);
    // The edge lies on the left flank: e_right = e - T/2.
    expect(plan.settings.at(-1)?.edgeSide).toBeCloseTo(0.2 - 1.5, 12);
    expect(plan.settings.at(-1)?.edgeStop).toBeCloseTo(0.2, 9);
  });

  it('raises the edge of an undercutting pass far enough for the side with less of it', () => {
    for (const shareLeft of [0.5, 0.3]) {
      const blades = [strip({ edge: { asHeatTreated: 0.7, wanted: 0.2, shareLeft } })];
      const sequence = [
        { belt: 'coarse', backing: 'bare', edge: 0.22, steeper: 0 },
        { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
      ];
      const { issues } = planSpineRest(input({ blades, sequence }));
      const mend = issues.find(({ code }) => code === 'undercuts')?.mend;
      expect(mend?.path).toBe('sequence.0.edge');
      const mended = sequence.map((pass, i) =>
        i > 0 ? pass : { ...pass, edge: Number(mend?.value) },
      );
      expect(codes({ blades, sequence: mended })).not.toContain('undercuts');
    }
  });

  it('holds only finite numbers', () => {
    const plan = planOf({ blades: [kitchen, strip()], grinder: grinder({ lean: 1.5 }) });
    const walk = (value: unknown): void => {
      if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      else if (Array.isArray(value)) value.forEach(walk);
      else if (value !== null && typeof value === 'object') Object.values(value).forEach(walk);
    };
    walk(plan);
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan);
  });
});
