import { describe, expect, it } from 'vitest';
import {
  blockNearer,
  padContact,
  placesAt,
  stickContact,
} from '../../jigs/spine-rest/place/hand.ts';
import { stickHeight } from '../../jigs/shared/parts/push-stick.ts';
import { solidsOf } from '../../jigs/spine-rest/fixture.ts';
import { solve } from '../../jigs/spine-rest/solve.ts';
import { stripFrom } from '../../jigs/spine-rest/strip/carried.ts';
import type { Motion } from '../../src/check/distance/motion.ts';
import { withValue } from '../../src/core/path.ts';
import type { Design } from '../../src/document/schema.ts';
import { examplesOf, valueOf } from '../family/examples.ts';

const designOf = (file: string): Design => {
  const example = examplesOf('spine-rest').find((one) => one.file.startsWith(file));
  if (!example) throw new Error('no example');
  return example.design;
};

/** The first blade ground on its left alone; the second on both sides. */
const oneSided = (design: Design): Design => ({
  ...design,
  blades: design.blades.map((blade, i) =>
    i > 0 ? blade : { ...blade, bevels: { ...blade.bevels, right: { kind: 'none' } } },
  ),
});

const asked = (design: Design) => {
  const q = valueOf(valueOf(solve(design)).question());
  const { context, v, strip } = q;
  const pads = {
    main: v.plate + context.l.push.pad,
    all: context.l.push.pads.map((height) => v.plate + height),
    margin: v.padMargin,
  };
  return { q, pads, from: strip && stripFrom(strip), solids: valueOf(solidsOf(q)) };
};

/** Where a body of what a check asks stands along y, by the names of its movements. */
const standsAt = (
  { solids }: Pick<ReturnType<typeof asked>, 'solids'>,
  id: string,
  name: string,
): ReadonlyMap<string, number> => {
  const found = solids.setUps
    .filter((setUp) => setUp.asked.some((one) => one.id === id))
    .flatMap(({ bodies }): Motion => bodies.get(name)?.motion ?? []);
  return new Map(
    found.flatMap((sweep) =>
      sweep.kind === 'still' ? [[sweep.label, sweep.pose.origin[1]] as const] : [],
    ),
  );
};

/** Places of block and pad along y. */
const nearest = (...of: Parameters<typeof blockNearer>): Record<'block' | 'pad', number> => {
  const [plan, setting, pads, from] = of;
  const placed = padContact(plan, setting, pads.main, from);
  const { block, pad } = blockNearer(...of);
  return { block: placed + block, pad: placed + pad };
};

const FILES = ['hunting', 'kitchen', 'paring', 'tapered'];

describe('the push block of a spine rest', () => {
  it.each([
    ...FILES.map((file) => [file, 0] as const),
    ['kitchen', -2] as const,
    ['kitchen', 0.8] as const,
  ])('comes no nearer to the belt than it is looked at, %s, a lean of %s degrees', (file, lean) => {
    const { q, pads, from = -Infinity } = asked(withValue(designOf(file), 'grinder.lean', lean));
    const { plan } = q;
    for (const setting of plan.settings) {
      const { block, pad: tip } = nearest(plan, setting, pads, from);
      for (const [place, cut] of placesAt(plan, setting)) {
        const { thickness, height, seating } = place;
        // As the maker is told: the highest pad that the edge stands a margin above.
        const pad = Math.max(...pads.all.filter((h) => seating.edge[1] - h >= pads.margin - 0.1));
        if (place.u < from || !Number.isFinite(pad)) continue;
        // The far face point by point, and a nose of 3 mm that is pushed against it.
        const [c, s] = [Math.cos, Math.sin].map((of) => of((seating.tilt * Math.PI) / 180));
        const reach = Array.from({ length: 4001 }, (_, i): number => {
          const v = (height * i) / 4000;
          const half = cut
            ? Math.min(thickness / 2, cut.edge + (height - v) * cut.rise)
            : thickness / 2;
          const y = seating.origin[0] - v * (s ?? 0) + half * (c ?? 1);
          const d = seating.origin[1] + v * (c ?? 1) + half * (s ?? 0) - pad;
          return Math.abs(d) < 3 ? y + Math.sqrt(9 - d * d) - 3 : -Infinity;
        });
        const y = Math.max(...reach);
        expect(block).toBeLessThanOrEqual(y + 1e-3);
        // Before a face through y = 0 that leans by t stands a point y cos t + z sin t.
        const t = (lean * Math.PI) / 180;
        const before = y * Math.cos(t) + pad * Math.sin(t);
        expect(tip * Math.cos(t) + pads.main * Math.sin(t)).toBeLessThanOrEqual(before + 1e-3);
      }
    }
  });

  it('comes nearer at another blade than where its pad meets the first', () => {
    const { q, pads } = asked(designOf('paring'));
    for (const setting of q.plan.settings.slice(1))
      expect(blockNearer(q.plan, setting, pads).block).toBeLessThan(-0.1);
  });

  it.each(FILES)('stands there in every check of block and hand, at every setting, %s', (file) => {
    const one = asked(designOf(file));
    for (const [id, name, key] of [
      ['clearance/pad/belt', 'pad', 'pad'],
      ['clearance/push/belt', 'push', 'block'],
      ['clearance/hand/belt', 'hand', 'block'],
    ] as const) {
      const places = standsAt(one, id, name);
      for (const setting of one.q.plan.settings) {
        const y = nearest(one.q.plan, setting, one.pads, one.from)[key];
        expect(places.get(setting.id), `${name} ${setting.id}`).toBeCloseTo(y, 6);
      }
    }
  });

  it('is looked at where the first blade is not ground but another is', () => {
    const one = asked(oneSided(designOf('kitchen')));
    const right = one.q.plan.settings.filter(({ side }) => side === 'right');
    expect(right.every(({ blades }) => blades.length === 1)).toBe(true);
    expect(right.length).toBeGreaterThan(0);
    for (const id of ['clearance/pad/belt', 'clearance/push/platen', 'clearance/step/belt']) {
      const places = standsAt(one, id, id.split('/')[1] ?? '');
      for (const setting of right) expect([...places.keys()], id).toContain(setting.id);
    }
  });
});

// The set-ups of a strip are made for one side at a time.
it('a push stick meets a blade with a strip as the other side was ground before', () => {
  const one = asked(designOf('tapered'));
  const { plan, v, context } = one.q;
  const height = v.plate + stickHeight(context);
  const places = [...standsAt(one, 'clearance/stick/belt', 'stick').values()];
  const wanted = plan.settings.map((setting) =>
    stickContact(plan, setting, height, v.padMargin, one.from),
  );
  for (const y of wanted)
    expect(Math.min(...places.map((p) => Math.abs(p - y)))).toBeLessThan(1e-6);
});
