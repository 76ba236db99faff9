import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planEdgeRest, type EdgeRestPlan } from '../../src/grind/index.ts';
import { centreAtLipOf } from '../../src/grind/edge-rest/at-lip.ts';
import { faceAt } from '../../src/grind/edge-rest/half.ts';
import { bar, hollow, input, parameters, planned, wheelGrinder } from './edge-samples.ts';
import { grindAt, gridOf } from './edge-brute.ts';

const rad = Math.PI / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const codes = (of: Parameters<typeof planEdgeRest>[0]): string[] =>
  planEdgeRest(of).issues.map(({ code }) => code);

const last = ({ settings }: EdgeRestPlan) => {
  const setting = settings.at(-1);
  if (setting === undefined) throw new Error('no setting');
  return setting;
};

/** The worked example of the design, R 150, c 20, d 0.3, the seat so low that the face leans back. */
const worked = () => {
  const blade = bar({
    edge: { asHeatTreated: 0.3, wanted: 0.05, shareLeft: 0.5 },
    bevels: { left: hollow(0.3, 20, 3), right: { kind: 'angle', angle: 3 } },
  });
  return planned(
    input({
      blades: [blade],
      grinder: wheelGrinder(298.2, [-150, 42]),
      sequence: [{ belt: 'fine', backing: 'bare', edge: 0.05 }],
      parameters: { ...parameters, lip: 'pads' },
    }),
  );
};

describe('the worked example', () => {
  it('leaves 1.03 mm at the edge, less at the top of a lip, and climbs as it deepens', () => {
    const s = last(worked());
    expect(s.wheel.radius).toBeCloseTo(150, 9);
    expect(s.roomAtSeat).toBeCloseTo(1.03, 2);
    expect(s.roomAtTop).toBeLessThan(s.roomAtSeat - 0.1);
    expect(s.firstCentre).toBeCloseTo(17.6, 1);
    expect(s.climb.perLip).toBeCloseTo(7.5, 1);
    expect(s.upper - s.lower).toBeCloseTo(2 * Math.sqrt(2 * 150 * 0.3 - 0.09), 6);
  });

  it('refuses a strip that has no room there, naming the most it may be thick', () => {
    const blade = bar({
      edge: { asHeatTreated: 0.3, wanted: 0.05, shareLeft: 0.5 },
      bevels: { left: hollow(0.3, 20, 3), right: { kind: 'none' } },
    });
    const result = planEdgeRest(
      input({
        blades: [blade],
        grinder: wheelGrinder(298.2, [-150, 40]),
        sequence: [{ belt: 'fine', backing: 'bare', edge: 0.05 }],
      }),
    );
    expect(result.ok).toBe(false);
    const issue = result.issues.find(({ code }) => code === 'lip-too-thick');
    expect(issue?.path).toBe('fixture.parameters.lipThickness');
    expect(issue?.message).toMatch(/0\.8 mm/);
  });
});

describe('a lip the other way round', () => {
  it('gives back the centre it was set for', () => {
    fc.assert(
      fc.property(between(16, 28), between(0.1, 0.4), between(60, 300), (centre, depth, dia) => {
        const blade = bar({ bevels: { left: hollow(depth, centre, 3), right: { kind: 'none' } } });
        const result = planEdgeRest(
          input({
            blades: [blade],
            grinder: wheelGrinder(dia, [-dia / 2, 45]),
            sequence: [{ belt: 'fine', backing: 'bare', edge: 0.4 }],
            parameters: { ...parameters, lip: 'pads' },
          }),
        );
        fc.pre(result.ok);
        if (!result.ok) return;
        const s = last(result.value);
        const place = s.blades[0]?.places[0];
        if (place === undefined) throw new Error('no place');
        const at = {
          section: place.section,
          face: faceAt(place.section.near, centre),
          wheel: s.wheel,
          lipHeight: parameters.lipHeight,
        };
        expect(centreAtLipOf(at, s.lip, depth)).toBeCloseTo(centre, 8);
      }),
      { numRuns: 25, seed: 5, endOnFailure: true },
    );
  });

  it('climbs at the printed rates when the lip is moved, or the cut deepened, by hand', () => {
    const blade = bar({ bevels: { left: hollow(0.3, 22, 3), right: { kind: 'angle', angle: 3 } } });
    const plan = planned(
      input({ blades: [blade], sequence: [{ belt: 'fine', backing: 'bare', edge: 0.4 }] }),
    );
    const s = last(plan);
    const half = (h: number): number => Math.min(2, 0.2 + h * Math.tan(3 * rad));
    const grid = gridOf(40, half, half);
    const rest = { radius: 100.9, drop: 25, lip: s.lip, lipHeight: parameters.lipHeight };
    // The middle between the limits, each of which is interpolated on the grid.
    const middle = (lip: number, depth: number): number => {
      const { lower, upper } = grindAt(grid, grid.near, 3, depth, { ...rest, lip });
      return (lower + upper) / 2 / Math.cos(3 * rad);
    };
    const [by, deeper] = [0.05, 0.02];
    const perLip = (middle(s.lip + by, 0.3) - middle(s.lip - by, 0.3)) / (2 * by);
    const perDepth = (middle(s.lip, 0.3 + deeper) - middle(s.lip, 0.3 - deeper)) / (2 * deeper);
    expect(perLip / s.climb.perLip).toBeCloseTo(1, 2);
    expect(perDepth / s.climb.perDepth).toBeCloseTo(1, 1);
  });
});

describe('the push of an edge rest', () => {
  it('balances a discretised wheel, lip and seat over friction and depth', () => {
    const blade = bar({ bevels: { left: hollow(0.3, 22, 3), right: { kind: 'angle', angle: 3 } } });
    const plan = planned(
      input({ blades: [blade], sequence: [{ belt: 'fine', backing: 'bare', edge: 0.4 }] }),
    );
    const s = last(plan);
    // Stand it by hand, then balance: unknown wheel scale N, lip S, seat Z for a push of 1.
    const tilt = s.tilt * rad;
    const place = s.blades[0]?.places[0];
    if (place === undefined) throw new Error('no place');
    const corner = (w: number): [number, number] => [w * Math.cos(tilt), w * Math.sin(tilt)];
    const foot = tilt < 0 ? corner(0.2) : corner(-0.2);
    const near = corner(-0.2);
    const lipAt: [number, number] = [s.lip, near[1] - foot[1]];
    const seatAt: [number, number] = [s.lip + foot[0] - near[0], 0];
    const force = (m: number, from: number, to: number): number => {
      let [fy, fz, moment] = [0, 0, 0];
      const n = 4000;
      for (let i = 0; i < n; i += 1) {
        const a = (from + ((to - from) * (i + 0.5)) / n) * rad;
        const [y, z] = [100.9 * Math.cos(a) - 100.9, 25 + 100.9 * Math.sin(a)];
        // Rotation about the lip moves this point along the normal by its lever.
        const p = Math.cos(a) * (z - lipAt[1]) - Math.sin(a) * (y - lipAt[0]);
        const [py, pz] = [p * (Math.cos(a) + m * Math.sin(a)), p * (Math.sin(a) - m * Math.cos(a))];
        fy += py;
        fz += pz;
        moment += (z - seatAt[1]) * py - (y - seatAt[0]) * pz;
      }
      expect(-fz / fy).toBeGreaterThanOrEqual(s.push.seatForceMin - 1e-3);
      // S + N fy = 1 and z_lip S + N moment = h, solved by Cramer's rule.
      const h = plan.pushHeight;
      return (moment - fy * h) / (moment - fy * lipAt[1]);
    };
    const whole = [0.2, 0.4, 0.6].map((m) => force(m, s.contact.from, s.contact.to));
    expect(s.push.lipForceMin).toBeLessThanOrEqual(Math.min(...whole) + 1e-3);
    expect(s.push.lipForceMax).toBeGreaterThanOrEqual(Math.max(...whole) - 1e-3);
    // The hollow's middle bears higher than the first touch: the most force is on the whole hollow.
    expect(s.push.lipForceMax).toBeCloseTo(Math.max(...whole), 3);
    expect(s.push.from).toBeLessThan(plan.pushHeight);
    expect(s.push.to).toBeGreaterThan(plan.pushHeight);
    expect(s.push.to).toBeLessThan(s.firstCentre);
  });
});

describe('hollows that cannot be, or should not be', () => {
  const with1 = (left: ReturnType<typeof hollow>, over = {}) =>
    input({
      blades: [bar({ bevels: { left, right: { kind: 'angle', angle: 3 } }, ...over })],
      sequence: [{ belt: 'fine', backing: 'bare', edge: 0.4 }],
    });

  it('names each', () => {
    expect(codes(with1(hollow(0.3, 6, 3)))).toContain('hollow-at-lip');
    expect(codes(with1(hollow(0.3, 36, 3)))).toContain('hollow-at-spine');
    const thin = { edge: { asHeatTreated: 0.3, wanted: 0.1, shareLeft: 0.5 } };
    expect(
      codes({
        ...with1(hollow(0.9, 24, 1), {
          ...thin,
          bevels: { left: hollow(0.9, 24, 1), right: { kind: 'angle', angle: 1 } },
        }),
        parameters: { ...parameters, lip: 'pads' },
      }),
    ).toContain('hollow-through');
    expect(
      codes({ ...with1(hollow(0.3, 22, 1.5), thin), parameters: { ...parameters, leastWeb: 1.3 } }),
    ).toContain('thin-web');
    expect(
      codes({
        ...with1(hollow(0.3, 22, 3)),
        sequence: [{ belt: 'fine', backing: 'leather', edge: 0.4 }],
      }),
    ).toContain('backing-on-wheel');
    expect(
      codes({
        ...with1(hollow(0.3, 22, 3)),
        sequence: [
          { belt: 'coarse', backing: 'bare', edge: 0.4, depthLeft: 0.3 },
          { belt: 'fine', backing: 'bare', edge: 0.4 },
        ],
      }),
    ).toContain('depth-left');
    expect(
      codes({ ...with1(hollow(0.3, 22, 3)), parameters: { ...parameters, wheel: 'none' } }),
    ).toContain('unknown-wheel');
    expect(
      codes({ ...with1(hollow(0.3, 22, 3)), grinder: wheelGrinder(200, [-101, 160]) }),
    ).toContain('drop-too-great');
    expect(
      codes(
        input({ blades: [bar({ bevels: { left: { kind: 'full' }, right: { kind: 'none' } } })] }),
      ),
    ).toContain('nothing-hollow');
    const up = wheelGrinder(200, [-101, 45], {
      belt: { width: 50, length: 1830, tracking: 2, flutter: 0.3, splice: 0.2, direction: 'up' },
    });
    expect(codes({ ...with1(hollow(0.3, 22, 3)), grinder: up })).toContain('blade-lifts');
  });

  it('warns of a pass that comes too near the finished hollow, and of one that is well short', () => {
    const passes = (depthLeft: number) =>
      input({
        sequence: [
          { belt: 'coarse', backing: 'bare', edge: 0.4, depthLeft },
          { belt: 'fine', backing: 'bare', edge: 0.4 },
        ],
      });
    expect(codes(passes(0.02))).toContain('undercuts');
    expect(codes(passes(0.1))).not.toContain('undercuts');
    // One word a pass, with the depth at which it stays outside.
    const told = planEdgeRest(passes(0.02)).issues.filter(({ code }) => code === 'undercuts');
    expect(told).toHaveLength(1);
    expect(told[0]?.mend?.path).toBe('sequence.0.depthLeft');
    expect(codes(passes(Number(told[0]?.mend?.value)))).not.toContain('undercuts');
    expect(codes(passes(Number(told[0]?.mend?.value) - 0.02))).toContain('undercuts');
  });
});

describe('a curved edge', () => {
  it('bounds the hollow by the sagitta over the lips: 1.5 mm at radius 300 over 30', () => {
    const points = Array.from({ length: 61 }, (_, i): [number, number] => {
      const u = (i * 150) / 60;
      return [u, 10 + Math.sqrt(300 ** 2 - (u - 75) ** 2) - 270 + 10];
    });
    const blade = bar({
      outline: {
        kind: 'curves',
        spine: [
          [0, 0],
          [150, 0],
        ],
        edge: points,
      },
      bevels: { left: hollow(0.2, 20, 3), right: { kind: 'none' } },
    });
    const plan = planned(
      input({
        blades: [blade],
        sequence: [{ belt: 'fine', backing: 'bare', edge: 0.4 }],
        parameters: { ...parameters, lipReach: 30, lipHeight: 2, lip: 'pads' },
      }),
    );
    const middle = plan.lines[0]?.places.find(({ u }) => u === 75);
    expect(middle?.certainty.kind).toBe('bounded');
    // The tilt turns a little of it towards the lip, so the bound is somewhat more.
    const by = middle?.certainty.kind === 'bounded' ? middle.certainty.by : NaN;
    const sagitta = 300 - Math.sqrt(300 ** 2 - 30 ** 2);
    expect(by).toBeGreaterThan(sagitta - 0.02);
    expect(by).toBeLessThan(2 * sagitta);
  });
});
