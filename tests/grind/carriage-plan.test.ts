import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planCarriage, type CarriageInput, type CarriagePlan } from '../../src/grind/index.ts';
import {
  rad,
  parameters,
  short,
  input,
  planned,
  outlineOf,
  thicknessAt,
  stand,
  cutter,
  remaining,
} from './carriage-brute.ts';
import { shapeOf } from '../../src/blade/shape.ts';
import { grinder } from './samples.ts';

const lineAt = (plan: CarriagePlan, side: 'left' | 'right', u: number) => {
  const line = plan.lines.find((l) => l.side === side);
  const place = line?.places.find((one) => Math.abs(one.u - u) < 1e-9);
  if (!line || !place) throw new Error(`no place ${String(u)}`);
  return place;
};

describe('a plan for a carriage', () => {
  it('meets the wish at the bevel place on both sides, by standing the real carriage', () => {
    const given = input();
    const plan = planned(given);
    for (const side of ['left', 'right'] as const) {
      const cut = cutter(given, plan, `2-${side}`);
      const blade = given.blades[0] ?? short();
      const u = 25;
      const edge = outlineOf(blade).edge(u);
      expect(cut.stage.tilt).toBeCloseTo(cut.setting.tilt, 5);
      expect(remaining([cut], blade, u, edge)).toBeCloseTo(0.1, 5);
      // 20 mm of bevel: just flank at 20.001 below the edge, just ground at 19.999.
      expect(remaining([cut], blade, u, edge - 20.001)).toBeCloseTo(2.5, 9);
      expect(remaining([cut], blade, u, edge - 19.999)).toBeLessThan(2.5);
      expect(lineAt(plan, side, 25).bevelHeight).toBeCloseTo(20, 9);
    }
  });

  it('agrees with real placement on random carriages, blades and leans', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.record({
          base: between(60, 160),
          footRadius: between(3, 8),
          tipRadius: between(2, 6),
          forward: between(20, 45),
          edgeHeight: between(60, 110),
          lean: between(0, 4),
          angle: between(3, 12),
          edge: between(0.15, 0.6),
          thickness: between(3, 8),
          slope: between(-0.12, 0.12),
          spineSlope: between(-0.05, 0.05),
        }),
        (x) => {
          const blade = short({
            outline: {
              kind: 'curves',
              spine: [
                [0, 0],
                [90, 90 * x.spineSlope],
              ],
              edge: [
                [0, 32],
                [90, 32 + 90 * x.slope],
              ],
            },
            thickness: [{ u: 0, t: x.thickness }],
            edge: { asHeatTreated: x.thickness, wanted: x.edge, shareLeft: 0.4 },
            bevels: { left: { kind: 'angle', angle: x.angle }, right: { kind: 'none' } },
          });
          const given = input({
            blades: [
              { ...blade, bevels: { ...blade.bevels, right: { kind: 'angle', angle: x.angle } } },
            ],
            grinder: grinder({ lean: x.lean }),
            sequence: [{ belt: 'fine', backing: 'bare', edge: x.edge, steeper: 0 }],
            parameters: { ...parameters, ...x },
          });
          const plan = planned(given);
          const own = given.blades[0] ?? blade;
          const cut = cutter(given, plan, '1-left');
          const line = plan.lines.find(({ side }) => side === 'left');
          for (const place of (line?.places ?? []).filter((_, i) => i % 17 === 3)) {
            // The section square to the spine at this place.
            const { spine, edge } = outlineOf(own);
            const s = Math.atan(x.spineSlope);
            const foot = [place.u, spine(place.u)] as const;
            const at = (h: number): [number, number] => [
              foot[0] - h * Math.sin(s),
              foot[1] + h * Math.cos(s),
            ];
            expect(at(place.height)[1]).toBeCloseTo(edge(at(place.height)[0]), 6);
            const left = (h: number) => remaining([cut], own, ...at(h));
            expect(left(place.height)).toBeCloseTo(x.edge * 0.4 + place.leftStanding, 5);
            if (place.bevelHeight < place.height - 0.1 && place.bevelHeight > 1) {
              const end = place.height - place.bevelHeight;
              expect(left(end - 1e-3)).toBeCloseTo(x.thickness / 2, 9);
              expect(left(end + 1e-3)).toBeLessThan(x.thickness / 2);
              const [low, high] = [left(end + 0.1), left(place.height)];
              const angle = Math.atan2(low - high, place.bevelHeight - 0.1) / rad;
              expect(angle).toBeCloseTo(place.angle, 5);
            }
          }
        },
      ),
      { numRuns: 12, seed: 5 },
    );
  }, 20_000);

  it('leaves a falling tip thicker by the fall times tan a, and evens it by more settings', () => {
    const excess = [0, 1, 2, 3].map((tipSettings) => {
      const given = input({
        parameters: { ...parameters, tipSettings },
        sequence: [{ belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 }],
      });
      const plan = planned(given);
      const blade = given.blades[0] ?? short();
      const ids = plan.settings.filter(({ side }) => side === 'left').map(({ id }) => id);
      expect(ids.length).toBe(tipSettings + 1);
      const cutters = ids.map((id) => cutter(given, plan, id));
      const { edge } = outlineOf(blade);
      const line = plan.lines.find(({ side }) => side === 'left');
      const places = line?.places ?? [];
      for (const place of places)
        expect(remaining(cutters, blade, place.u, edge(place.u))).toBeCloseTo(
          0.1 + place.leftStanding,
          5,
        );
      if (tipSettings === 0) {
        const at = places.find(({ u }) => u === 80);
        const rise = (2.5 - 0.1) / 20;
        expect(at?.leftStanding).toBeCloseTo((28 - edge(80)) * rise, 6);
      }
      return line?.tip.leftSteering ?? NaN;
    });
    expect(excess[0]).toBeGreaterThan(1);
    for (const [i, left] of excess.entries())
      if (i > 0) expect(left).toBeLessThan(excess[i - 1] ?? 0);
    expect(excess[3]).toBeLessThan(0.12);
  });

  it('counts with the edge that a blade comes with, on both sides', () => {
    const stops = (asHeatTreated: number): (number | undefined)[] => {
      const edge = { asHeatTreated, wanted: 0.2, shareLeft: 0.5 };
      return planned(input({ blades: [short({ edge })] })).settings.map((one) => one.edgeStop);
    };
    // Belts at 0.4 and 0.2 mm, left before right: half of what the other side still has is added.
    const [half, fine] = [0.4 / 2, 0.2 / 2];
    const after = [half + half, fine + half, fine + fine];
    for (const [comes, other] of [
      [0.8, 0.4],
      [5, 2.5],
    ] as const)
      stops(comes).forEach((stop, i) => {
        expect(stop).toBeCloseTo([half + other, ...after][i] ?? NaN, 6);
      });
  });

  it('bounds what a taper under the jaw does, and warns when the edge comes out thin', () => {
    const tapered = short({
      thickness: [
        { u: -60, t: 5.6 },
        { u: 90, t: 4.1 },
      ],
    });
    const given = input({ blades: [tapered] });
    const result = planCarriage(given);
    if (!result.ok) throw new Error('no plan');
    const cut = cutter(given, result.value, '2-left');
    const { edge } = outlineOf(tapered);
    const line = result.value.lines.find(({ side }) => side === 'left');
    for (const place of line?.places ?? []) {
      const left = remaining([cut], tapered, place.u, edge(place.u));
      expect(Math.abs(left - (0.1 + place.leftStanding))).toBeLessThan(2e-4);
      const { certainty } = place;
      expect(certainty.kind).toBe('bounded');
      if (place.u < 50 && certainty.kind === 'bounded') {
        const end = edge(place.u) - place.bevelHeight;
        const by = certainty.by + 1e-3;
        const flank = thicknessAt(tapered, place.u) / 2;
        expect(remaining([cut], tapered, place.u, end - by)).toBeCloseTo(flank, 9);
        expect(remaining([cut], tapered, place.u, end + by)).toBeLessThan(flank);
      }
    }
    // Towards the plunge the midplane comes nearer to the belt than at the bevel place.
    expect(result.issues.map(({ code }) => code)).toContain('thin-edge');
  });

  it('never cuts an earlier pass into the finished face, and says so when asked to', () => {
    const given = input();
    const plan = planned(given);
    const blade = given.blades[0] ?? short();
    const [coarse, fine] = ['1-left', '2-left'].map((id) => cutter(given, plan, id));
    if (!coarse || !fine) throw new Error('no cut');
    expect(coarse.setting.blades[0]?.undercutMargin).toBeGreaterThan(0);
    for (let u = 1; u <= 80; u += 4)
      for (let d = 0; d <= 20; d += 1) {
        const v = outlineOf(blade).edge(u) - d;
        if (v <= 0) continue;
        const [first, last] = [[coarse], [fine]].map((cut) => remaining(cut, blade, u, v));
        expect(first ?? 0).toBeGreaterThanOrEqual((last ?? 0) - 1e-9);
      }
    const flatter = input({
      sequence: [
        { belt: 'coarse', backing: 'bare', edge: 0.25, steeper: -1 },
        { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
      ],
    });
    const result = planCarriage(flatter);
    expect(result.issues.map(({ code }) => code)).toContain('undercuts');
  });

  it('turns the knob to the angle and tells how the edge comes down on the way', () => {
    const given = input();
    const plan = planned(given);
    for (const setting of plan.settings) {
      const { heel, fence, progress } = setting;
      const zero = heel.extension - heel.turnsFromZero * parameters.screwPitch;
      expect(stand(parameters, zero, fence).tilt).toBeCloseTo(0, 6);
      const dialled = Math.floor(heel.turnsFromZero + 1e-9) + heel.division / parameters.divisions;
      const shown = stand(parameters, zero + dialled * parameters.screwPitch, fence).tilt;
      expect(Math.abs(shown - setting.tilt)).toBeLessThan(heel.degreesPerTurn / 99);
      // The carriage held off its fence by the gap of each row leaves the edge of that row.
      const blade = given.blades[0] ?? short();
      for (const row of progress) {
        const held = {
          ...plan,
          settings: [{ ...setting, fence: fence + row.gap }],
        };
        const cut = cutter(given, held, setting.id);
        const earlier = plan.settings.filter(
          ({ side, step }) => side === setting.side && step < setting.step,
        );
        const cuts = [...earlier.map(({ id }) => cutter(given, plan, id)), cut];
        expect(remaining(cuts, blade, 25, 28)).toBeCloseTo(row.edgeSide, 5);
      }
      expect(progress.at(-1)?.gap).toBeCloseTo(0, 9);
    }
  });

  it('tells the highest contact where the edge bends both ways and stands above where it is held', () => {
    const bent = short({
      outline: {
        kind: 'curves',
        spine: [
          [0, 0],
          [90, 4],
        ],
        edge: [
          [0, 29],
          [25, 28],
          [50, 28.6],
          [75, 26],
          [90, 4.5],
        ],
      },
    });
    const given = input({ blades: [bent] });
    const plan = planned(given);
    const edge = (u: number): number => shapeOf(bent).edge.value(u);
    const { placed, before, setting } = cutter(given, plan, '2-left', edge);
    // The edge where its line is highest, and the height at which the belt meets it there.
    const [low, high] = [placed([50, 28.6, 0]), placed([50, 28.6, 1])];
    const w = before([50, 28.6, 0]) / (before([50, 28.6, 0]) - before([50, 28.6, 1]));
    const z = low[2] + w * (high[2] - low[2]);
    const held = setting.clamping[0]?.u ?? NaN;
    expect(z).toBeGreaterThan(placed([held, edge(held), 0])[2] + 0.5);
    expect(setting.contact[1]).toBeGreaterThan(z - 0.02);
    expect(setting.contact[1]).toBeLessThan(z + 0.2);
  });

  it('keeps the heel down by balancing forces on the standing carriage', () => {
    for (const lean of [0, 3]) {
      const given = input({ grinder: grinder({ lean }) });
      const plan = planned(given);
      const { setting, stage } = cutter(given, plan, '2-left');
      const t = lean * rad;
      const heelAt = stage.place([
        0,
        -parameters.base,
        parameters.tipRadius - setting.heel.extension,
      ]);
      const footAt = stage.place([0, 0, parameters.footRadius]);
      const balance = (height: number, m: number): number => {
        // Unknown N, foot and heel force for a push of 1 along -y; weights left out.
        const z = setting.contact[0];
        const [by, bz] = [-z * Math.sin(t), z * Math.cos(t)];
        const [fy, fz] = [Math.cos(t) + m * Math.sin(t), Math.sin(t) - m * Math.cos(t)];
        const n = 1 / fy;
        // Moments about the foot's contact (y z' - z y'), push at `height` acting along -y.
        const belt = (by - footAt[1]) * n * fz - bz * n * fy;
        const push = height;
        return -(belt + push) / (heelAt[1] - footAt[1]);
      };
      const { push } = setting;
      expect(balance(25, 0.6)).toBeCloseTo(push.heelForceMin, 6);
      expect(balance(25, 0.2)).toBeCloseTo(push.heelForceMax, 6);
      expect(balance(push.to, 0.6)).toBeCloseTo(parameters.reserve, 6);
    }
  });

  it('states what a tenth of fence and a division of the screw do', () => {
    const given = input();
    const plan = planned(given);
    const blade = given.blades[0] ?? short();
    const { setting } = cutter(given, plan, '2-left');
    const [one] = plan.sensitivity;
    const left = (fence: number, turns: number): number => {
      const moved = {
        ...setting,
        fence: setting.fence + fence,
        heel: { ...setting.heel, extension: setting.heel.extension + turns },
      };
      return remaining([cutter(given, { ...plan, settings: [moved] }, '2-left')], blade, 25, 28);
    };
    expect(Math.abs(left(0.1, 0) - left(0, 0))).toBeCloseTo(one?.edgePerTenth ?? NaN, 6);
    expect(Math.abs(left(0, 0.02) - left(0, -0.02)) / 2).toBeCloseTo(
      one?.edgePerDivision ?? NaN,
      5,
    );
    // 0.1 mm at the edge over tan(6.843 degrees), by hand: 0.1 / 0.12 / cos = 0.839.
    expect(one?.heightPerTenth).toBeCloseTo(0.1 / 0.12 / Math.cos(Math.atan(0.12)), 4);
  });

  it('refuses what no carriage can do, by name', () => {
    const codes = (over: Partial<CarriageInput>) =>
      planCarriage(input(over)).issues.map(({ code }) => code);
    expect(codes({ blades: [] })).toContain('no-blades');
    expect(codes({ sequence: [] })).toContain('no-sequence');
    expect(codes({ grinder: grinder({ platen: { kind: 'none' } }) })).toContain('no-platen');
    expect(codes({ grinder: grinder({ lean: -12 }) })).toContain('tilt-out-of-reach');
    const hollow = { kind: 'hollow', depth: 0.3, centre: 15 } as const;
    expect(codes({ blades: [short({ bevels: { left: hollow, right: hollow } })] })).toContain(
      'hollow-on-platen',
    );
    expect(codes({ parameters: { ...parameters, jaw: { ...parameters.jaw, gap: 0 } } })).toContain(
      'jaw-at-belt',
    );
    expect(codes({ parameters: { ...parameters, pushHeight: 70 } })).toContain('push-too-high');
  });
});
