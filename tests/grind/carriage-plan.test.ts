import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Blade } from '../../src/blade/schema.ts';
import { planCarriage, type CarriageInput, type CarriagePlan } from '../../src/grind/index.ts';
import { grinder, strip } from './samples.ts';

const rad = Math.PI / 180;
type V3 = [number, number, number];

const parameters: CarriageInput['parameters'] = {
  base: 100,
  footRadius: 5,
  tipRadius: 3,
  screwPitch: 1,
  divisions: 50,
  forward: 30,
  edgeHeight: 80,
  jaw: { gap: 6, width: 20, thickness: 8, below: 10 },
  plungeStop: 1,
  tipOverlap: 8,
  tipSettings: 0,
  friction: [0.2, 0.6],
  reserve: 0.1,
  pushHeight: 25,
  angleTolerance: 0.02,
  fenceTolerance: 0.05,
};

/** A short thick blade: straight edge to 50, then a belly that falls to the tip. */
const short = (over: Partial<Blade> = {}): Blade =>
  strip({
    name: 'Short',
    outline: {
      kind: 'dimensions',
      length: 90,
      heelHeight: 28,
      bellyStart: 50,
      bellyHeight: 28,
      spineDropStart: 90,
      tipDrop: 4,
      spineSagitta: 0,
    },
    ricasso: 30,
    thickness: [{ u: 0, t: 5 }],
    bevels: { left: { kind: 'height', height: 20 }, right: { kind: 'height', height: 20 } },
    line: { follow: 'spine', allowed: 5 },
    ...over,
  });

const input = (over: Partial<CarriageInput> = {}): CarriageInput => ({
  blades: [short()],
  grinder: grinder(),
  sequence: [
    { belt: 'coarse', backing: 'bare', edge: 0.4, steeper: 0.3 },
    { belt: 'fine', backing: 'bare', edge: 0.2, steeper: 0 },
  ],
  parameters,
  ...over,
});

const planned = (given: CarriageInput): CarriagePlan => {
  const result = planCarriage(given);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join('; '));
  return result.value;
};

/**
 * A carriage built of points: foot and tip as fine rounds, turned about the stroke until both
 * lowest points are level, then moved until the foot's front is where the fence is. Takes a point
 * (stroke, ahead of the foot's centre, height over the base, level) to (x, y from the abrasive
 * face's foot, z). Nothing of the solver is used.
 */
const stand = (p: CarriageInput['parameters'], extension: number, fence: number) => {
  const round = (ahead: number, height: number, r: number) =>
    Array.from({ length: 7200 }, (_, i) => [
      ahead + r * Math.cos((i * rad) / 20),
      height + r * Math.sin((i * rad) / 20),
    ]);
  const foot = round(0, p.footRadius, p.footRadius);
  const tip = round(-p.base, p.tipRadius - extension, p.tipRadius);
  const lowest = (points: number[][], a: number) =>
    Math.min(...points.map(([y = 0, z = 0]) => z * Math.cos(a) - y * Math.sin(a)));
  let [low, high] = [-0.5, 1];
  for (let i = 0; i < 45; i += 1) {
    const middle = (low + high) / 2;
    if (lowest(tip, middle) < lowest(foot, middle)) low = middle;
    else high = middle;
  }
  const a = (low + high) / 2;
  const ahead = (y: number, z: number) => y * Math.cos(a) + z * Math.sin(a);
  const front = Math.max(...foot.map(([y = 0, z = 0]) => ahead(y, z)));
  const down = lowest(foot, a);
  return {
    tilt: a / rad,
    place: ([x, y, z]: V3): V3 => [
      x,
      fence + front - ahead(y, z),
      z * Math.cos(a) - y * Math.sin(a) - down,
    ],
  };
};

/** Edge and spine of the outlines used here, by their own circles. */
const outlineOf = (blade: Blade) => {
  const o = blade.outline;
  if (o.kind === 'curves') {
    const [a, b] = [o.edge[0] ?? [0, 0], o.edge.at(-1) ?? [0, 0]];
    const [c, d] = [o.spine[0] ?? [0, 0], o.spine.at(-1) ?? [0, 0]];
    const on = (p: readonly number[], q: readonly number[]) => (u: number) =>
      (p[1] ?? 0) + (((q[1] ?? 0) - (p[1] ?? 0)) * (u - (p[0] ?? 0))) / ((q[0] ?? 0) - (p[0] ?? 0));
    return { edge: on(a, b), spine: on(c, d) };
  }
  const [run, fall] = [o.length - o.bellyStart, o.bellyHeight - o.tipDrop];
  const r = (run * run + fall * fall) / (2 * fall);
  return {
    spine: () => 0,
    edge: (u: number) =>
      u <= o.bellyStart
        ? o.bellyHeight
        : o.bellyHeight - r + Math.sqrt(r * r - (u - o.bellyStart) ** 2),
  };
};

const thicknessAt = (blade: Blade, u: number): number => {
  const [a, b] = [blade.thickness[0], blade.thickness.at(-1)];
  if (!a || !b || a === b) return a?.t ?? 0;
  return a.t + ((b.t - a.t) * (u - a.u)) / (b.u - a.u);
};

/** One clamping of the plan as a real cut: signed distance of a blade point before the belt. */
const cutter = (given: CarriageInput, plan: CarriagePlan, id: string) => {
  const setting = plan.settings.find((s) => s.id === id);
  const blade = given.blades[0];
  if (!setting || !blade) throw new Error(id);
  const p = given.parameters;
  const stage = stand(p, setting.heel.extension, setting.fence);
  const { edge } = outlineOf(blade);
  const held = setting.clamping[0]?.u ?? 0;
  const step = 1e-4;
  const r = Math.atan2(edge(held + step) - edge(held - step), 2 * step);
  // The far flank lies on the upright: two points of it under the jaw fix the yaw.
  const [near, far] = [-p.jaw.gap, -p.jaw.gap - p.jaw.width];
  const onTang = far < -blade.ricasso;
  const half = (u: number) => (onTang ? blade.tang.thickness : thicknessAt(blade, u)) / 2;
  const yaw = Math.atan2(half(near) - half(far), near - far);
  const ahead = (u: number, w: number): number =>
    (u - far) * Math.sin(yaw) + w * Math.cos(yaw) + half(far) * Math.cos(yaw);
  const t = given.grinder.lean * rad;
  const before = ([u, v, w]: V3): number => {
    const along = u - held;
    const up = v - edge(held);
    const level: V3 = [
      along * Math.cos(r) + up * Math.sin(r),
      p.forward + ahead(u, w),
      p.edgeHeight + up * Math.cos(r) - along * Math.sin(r),
    ];
    const [, y, z] = stage.place(level);
    return y * Math.cos(t) + z * Math.sin(t);
  };
  return { setting, stage, before };
};

/** Half-thickness that remains on the near side at (u, v) after the cuts. */
const remaining = (
  cutters: readonly { before: (p: V3) => number }[],
  blade: Blade,
  u: number,
  v: number,
): number => {
  const flank = thicknessAt(blade, u) / 2;
  let w = flank;
  for (const { before } of cutters) {
    // Linear in w: solve for the plane by two points.
    const [d0, d1] = [before([u, v, 0]), before([u, v, 1])];
    w = Math.min(w, d0 / (d0 - d1));
  }
  return w;
};

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
            edge: { asHeatTreated: 0.7, wanted: x.edge, shareLeft: 0.4 },
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
