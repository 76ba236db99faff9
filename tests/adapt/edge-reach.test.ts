import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isProved, provedRun, type Band } from '../../src/adapt/reach.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture } from '../../src/family/index.ts';
import { point, type Interval } from '../../src/geometry/interval.ts';
import { bevelled, type EdgeSection, type Half } from '../../src/grind/edge-rest/half.ts';
import { centreAtLipOf } from '../../src/grind/edge-rest/at-lip.ts';
import { contactOf, lipPush } from '../../src/grind/edge-rest/lip-push.ts';
import { atWheel, placeFor } from '../../src/grind/edge-rest/place.ts';
import { pushRange } from '../../src/grind/edge-rest/push-range.ts';
import { hollowRange, type HollowRange } from '../../src/grind/edge-rest/section-range.ts';
import { bandOf, boxOf, holds, openedOf, raise, solved } from './boxes.ts';

const PUSHING = { friction: [0.2, 0.6], reserve: 0.1, wheelShare: 0.3 } as const;

describe('a range of hollows on an edge rest', () => {
  it('is the worked example: R 150, c 20, d 0.3, wheel 20 over the seat', () => {
    // L = hypot(149.7, 20) = 151.0301, y = sqrt(L^2 - 20^2) - 150 = -0.3000, square to the seat.
    const found = hollowRange({
      thickness: point(4),
      centre: point(20),
      depth: point(0.3),
      near: { edge: point(2), angle: undefined },
      far: { edge: point(2), angle: undefined },
      width: point(4),
      wheel: { radius: 150, drop: 20 },
      lipHeight: 1,
    });
    expect(found.lip[0]).toBeCloseTo(-0.3, 9);
    expect(found.tilt[0]).toBeCloseTo(0, 9);
    // Half a chord: sqrt(0.3 (300 - 0.3)) = 9.4821.
    expect(found.lower[0]).toBeCloseTo(20 - 9.4821, 4);
  });

  it('holds what the solver finds for every hollow of it, one by one', () => {
    const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    let [compared, pushed] = [0, 0];
    fc.assert(
      fc.property(
        fc.record({
          thickness: size(1.5, 8),
          centre: size(8, 40),
          depth: size(0.05, 0.9),
          edge: size(0.05, 0.4),
          near: fc.option(size(1, 8), { nil: undefined }),
          far: fc.option(size(1, 8), { nil: undefined }),
          radius: size(25, 200),
          drop: size(-10, 40),
          lipHeight: size(0.5, 4),
        }),
        fc.tuple(share, share, share),
        // Nearly single bars as well, of which too narrow a range does not hold the answer.
        fc.constantFrom(1, 0.001),
        (bar, [a, b, c], wide) => {
          const around = (value: number, part: number, by: number): Interval => [
            value - part * by * wide,
            value + (1 - part) * by * wide,
          ];
          const { thickness, centre, depth, lipHeight } = bar;
          const stock = thickness / 2;
          fc.pre(bar.edge < stock - 0.2);
          const half = (angle: number | undefined): Half => ({
            stock,
            bevels: angle === undefined ? [] : [bevelled({ edge: bar.edge, angle })],
            hollows: [],
          });
          const section: EdgeSection = { height: 90, near: half(bar.near), far: half(bar.far) };
          const wheel = { radius: bar.radius, drop: bar.drop };
          const at = atWheel(section, { depth, centre }, wheel, lipHeight);
          const place = placeFor(at, centre, depth);
          const thick = around(thickness, a, 0.2);
          const sideOf = (angle: number | undefined) => ({
            edge: angle === undefined ? ([thick[0] / 2, thick[1] / 2] as const) : point(bar.edge),
            angle,
          });
          const range: HollowRange = {
            width:
              bar.near === undefined && bar.far === undefined
                ? thick
                : bar.near !== undefined && bar.far !== undefined
                  ? point(2 * bar.edge)
                  : [thick[0] / 2 + bar.edge, thick[1] / 2 + bar.edge],
            thickness: thick,
            centre: around(centre, b, 0.5),
            depth: around(depth, c, 0.04),
            near: sideOf(bar.near),
            far: sideOf(bar.far),
            wheel,
            lipHeight,
          };
          const found = hollowRange(range);
          if (place === undefined || place.limits.atEdge) return;
          compared += 1;
          const { standing, limits } = place;
          expect(holds(found.lip, standing.lip), 'lip').toBe(true);
          expect(holds(found.tilt, standing.tilt), 'tilt').toBe(true);
          expect(holds(found.corner, standing.corner[1]), 'corner').toBe(true);
          expect(holds(found.lower, place.lower), 'lower').toBe(true);
          expect(holds(found.top, limits.upper), 'top').toBe(true);
          const whole = { ...place, u: 0, thickness, edge: 0, guided: true };
          const contact = contactOf(at, whole);
          expect(holds(found.from, contact.from), 'from').toBe(true);
          expect(holds(found.to, contact.to), 'to').toBe(true);
          // Walked along the hollow: nearer to the midplane than proved it comes nowhere.
          for (let i = 0; i <= 40; i += 1) {
            const h = limits.lower + ((limits.upper - limits.lower) * i) / 40;
            const left =
              place.circle.w - Math.sqrt(place.circle.radius ** 2 - (h - place.circle.h) ** 2);
            expect(left).toBeGreaterThan(found.left[0] - 1e-9);
          }
          const first = centreAtLipOf(at, standing.lip, 0);
          const proved = pushRange(range, found, PUSHING);
          if (first === undefined || !Number.isFinite(proved.from[0])) return;
          pushed += 1;
          const push = lipPush(at, whole, first, PUSHING, 0);
          expect(holds(proved.from, push.from), 'push from').toBe(true);
          expect(holds(proved.to, push.to), 'push to').toBe(true);
          expect(holds(proved.down, push.seatForceMin), 'seat').toBe(true);
          expect(proved.to[1] - proved.to[0]).toBeLessThan(12);
        },
      ),
      { numRuns: 400, seed: 5 },
    );
    expect(compared).toBeGreaterThan(150);
    expect(pushed).toBeGreaterThan(80);
  });
});

const opened = openedOf('edge-rest');

/** A bar with straight spine and edge, hollow as its first blade is, with other sizes. */
const withBar = (
  design: Design,
  size: { centre: number; depth: number; thickness: number; height: number },
): Design => ({
  ...design,
  blades: design.blades.slice(0, 1).map((blade) => {
    const { centre, depth, thickness, height } = size;
    const side = (now: typeof blade.bevels.left): typeof blade.bevels.left =>
      now.kind === 'hollow' ? { ...now, centre, depth } : now;
    const straight = (v: number): [number, number][] => [
      [0, v],
      [150, v],
    ];
    return {
      ...blade,
      outline: { kind: 'curves', spine: straight(0), edge: straight(height) },
      thickness: [{ u: 0, t: thickness }],
      bevels: { left: side(blade.bevels.left), right: side(blade.bevels.right) },
    };
  }),
});

describe.each(['slicer-200-hollow', 'side-165-leaning', 'herb-110-small-wheel'])(
  'what the edge rest of %s can still hollow',
  (name) => {
    const design = opened(name);
    const fixture = solved(design);
    const { axes, limits } = fixture.reach ?? raise('no reach');
    const [own = raise('no blade')] = design.blades;
    const hollow = own.bevels.left.kind === 'hollow' ? own.bevels.left : raise('not hollow');
    const thickness = own.thickness[0]?.t ?? NaN;
    const band: Band = bandOf(
      [hollow.centre - 0.1, hollow.centre + 0.1],
      [hollow.depth - 0.02, hollow.depth + 0.02],
    );

    it('holds the blades it was made for', () => {
      for (const { places } of fixture.lines)
        for (const { height } of places.slice(0, 3))
          expect(isProved(limits, boxOf(hollow.centre, hollow.depth, thickness, height))).toBe(
            true,
          );
    });

    it('states of bars at the ends of proved bands what the solver finds for them', () => {
      const run = provedRun(limits, axes, band, point(60)) ?? raise('nothing proved');
      expect(run[0]).toBeLessThanOrEqual(thickness);
      expect(run[1]).toBeGreaterThanOrEqual(thickness);
      const travel = limits.find(({ id }) => id === 'travel') ?? raise('no travel');
      const lipOf = ({ settings }: Fixture, id: string): number =>
        settings.find((one) => one.id === id)?.readings.find(({ key }) => key === 'lip')?.value ??
        NaN;
      // The slide of the fixture as it is: its front against its lip.
      const [first = raise('no setting')] = fixture.settings;
      const box = (centre: number, depth: number, thick: number) => boxOf(centre, depth, thick, 60);
      const frontOfOwn = travel.found(box(hollow.centre, hollow.depth, thickness));
      for (const share of [0, 1]) {
        const [centre = NaN, depth = NaN, thick = NaN] = [band.across, band.up, run].map(
          ([low, high]) => low + share * (high - low),
        );
        const bar = withBar(design, { centre, depth, thickness: thick, height: 60 });
        const other = solved(bar);
        expect(other.settings.map(({ id }) => id)).toEqual(fixture.settings.map(({ id }) => id));
        const front = travel.found(box(centre, depth, thick));
        // What the lip moves between two blades the slide moves on its base.
        const moved = other.settings.map(({ id }) => lipOf(other, id) - lipOf(fixture, id));
        expect(Number.isFinite(lipOf(other, first.id))).toBe(true);
        expect(front[0] - frontOfOwn[0]).toBeGreaterThan(Math.min(...moved) - 1e-6);
        expect(front[1] - frontOfOwn[1]).toBeLessThan(Math.max(...moved) + 1e-6);
      }
    });

    it('ends where a limit is met: less than a millimetre beyond, the blade itself is out', () => {
      const run = { ...axes.run, from: thickness, to: thickness + 0.1, step: 0.1 };
      const isIn = (centre: number): boolean => {
        const narrow = bandOf([centre, centre + 0.2], [hollow.depth, hollow.depth + 0.01]);
        return provedRun(limits, { run }, narrow, point(60)) !== null;
      };
      for (const way of [-0.2, 0.2]) {
        let centre = hollow.centre;
        while (isIn(centre) && centre > 5 && centre < 55) centre += way;
        expect(Math.abs(centre - hollow.centre)).toBeGreaterThan(0.3);
        const beyond = boxOf(centre + 4 * way, hollow.depth, thickness, 60);
        expect(isProved(limits, beyond), `at ${String(centre)}`).toBe(false);
      }
      // Too low a blade for the hollow is told by its spine.
      const low = { ...band, run: point(thickness), also: point(hollow.centre) };
      expect(isProved(limits, low)).toBe(false);
    });
  },
);
