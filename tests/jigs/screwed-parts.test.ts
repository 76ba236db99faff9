import { describe, expect, it } from 'vitest';
import { slotIssues } from '../../jigs/backing-carrier/slots.ts';
import { mountOf } from '../../jigs/carriage/layout/mount.ts';
import { bladeInCarriage, jawFrame } from '../../jigs/carriage/place/stand.ts';
import { solve as solveCarriage } from '../../jigs/carriage/solve.ts';
import { padContact, nearestContact } from '../../jigs/edge-rest/place/hand.ts';
import { rangeChecks as edgeRanges } from '../../jigs/edge-rest/checks/ranges.ts';
import { solve as solveEdge } from '../../jigs/edge-rest/solve.ts';
import { keeperLockLength } from '../../jigs/shared/layout/threads.ts';
import type { PlacedRest } from '../../jigs/shared/layout/mount.ts';
import { withValue } from '../../src/core/path.ts';
import type { Body } from '../../src/check/distance/index.ts';
import { place as placePoint, type Vec3 } from '../../src/family/index.ts';
import type { Placement } from '../../src/model/part.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const exampleOf = (family: string, file: string) => {
  const example = examplesOf(family).find((one) => one.file.startsWith(file));
  if (!example) throw new Error('no example');
  return example;
};

/** "iso-4762-m4-x-20-8-8" is 20 mm long. */
const lengthOf = ({ part }: Placement): number => Number(/-x-(\d+)-/.exec(part)?.[1]);

const named = (placements: readonly Placement[], name: string): Placement => {
  const found = placements.find((one) => one.name === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
};

const away = (a: Placement, b: Placement): number =>
  Math.hypot(...a.frame.origin.map((x, k) => x - (b.frame.origin[k] ?? NaN)));

type Slots = Extract<PlacedRest['pattern'], { readonly kind: 'slots' }>;

/** A table 400 mm wide with slots along one axis. */
const slotted = (axis: Slots['axis'], slots: Slots['slots']): PlacedRest => ({
  kind: 'table',
  half: 200,
  front: -50,
  back: 300,
  thickness: 10,
  pattern: { kind: 'slots', axis, slots },
  offset: 0,
});

describe('screws that hold with a nut or an end', () => {
  it.each(
    ['spine-rest', 'edge-rest'].flatMap((family) =>
      examplesOf(family).map((one) => [`${family} ${one.file}`, one] as const),
    ),
  )('fill the nuts of the stop collar, %s', (_, example) => {
    const { place, settings, parts } = solved(example);
    const placements = place(settings[0]?.id ?? '');
    const plate = valueOf(parts()).find(({ id }) => id === 'stop-collar');
    const thick = Math.max(...(plate?.layers.map(({ to }) => to) ?? []));
    for (const i of ['1', '2']) {
      const [screw, nut] = [
        named(placements, `collar-screw-${i}`),
        named(placements, `collar-nut-${i}`),
      ];
      // Head and nut look away from each other, and an M4 nut is 3.2 mm high (ISO 4032).
      const [a, b] = [screw.frame.z, nut.frame.z];
      expect(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]).toBeCloseTo(-1, 9);
      expect(lengthOf(screw)).toBeGreaterThanOrEqual(away(screw, nut) + 3.2 - 1e-6);
      // Both plates and the blade lie between them.
      expect(away(screw, nut)).toBeGreaterThan(2 * thick);
      const outwards = a.map(
        (x, k) => x * ((nut.frame.origin[k] ?? NaN) - (screw.frame.origin[k] ?? NaN)),
      );
      expect(outwards.reduce((sum, x) => sum + x)).toBeCloseTo(-away(screw, nut), 6);
    }
  });

  it.each([3, 5, 8, 10, 12])('reach through a keeper of %s mm, head above it', (plate) => {
    // Lengths of hexagon socket head cap screws M6, as listed in ISO 4762.
    const listed = [8, 10, 12, 16, 20, 25, 30];
    const length = keeperLockLength(plate);
    expect(listed).toContain(length);
    expect(length).toBeGreaterThanOrEqual(plate + 3);
  });

  it('press on the step with some of the locking screw above its keeper', () => {
    const { place, settings, parts } = solved(exampleOf('edge-rest', 'side-165'));
    const placements = place(settings[0]?.id ?? '');
    const keeper = valueOf(parts()).find(({ id }) => id === 'keeper');
    const thick = Math.max(...(keeper?.layers.map(({ to }) => to) ?? []));
    for (const i of ['1', '2']) {
      const [screw, bar] = [named(placements, `lock-screw-${i}`), named(placements, `keeper-${i}`)];
      const head = screw.frame.origin[2] - bar.frame.origin[2];
      // Its end is level with the under side of the keeper, where the step is.
      expect(head - lengthOf(screw)).toBeCloseTo(0, 6);
      expect(head - thick).toBeGreaterThanOrEqual(3 - 1e-9);
    }
  });
});

describe('a carrier', () => {
  it.each(examplesOf('backing-carrier').map((one) => [one.file, one] as const))(
    'has rods that end beyond their nuts, %s',
    (_, example) => {
      const { place, settings } = solved(example);
      const placements = place(settings[0]?.id ?? '');
      const rod = named(placements, 'rod-1');
      const [right, left] = ['right', 'left'].map((side) => named(placements, `nut-${side}-1`));
      // A nut M6 is 5.2 mm high (ISO 4032).
      const outer = (nut?: Placement): number => (nut?.frame.origin[0] ?? NaN) + 5.2;
      expect(rod.frame.origin[0] + lengthOf(rod)).toBeGreaterThanOrEqual(outer(right));
      expect(rod.frame.origin[0]).toBeLessThanOrEqual((left?.frame.origin[0] ?? NaN) - 5.2);
    },
  );

  it('has no bolt of its platen at any of its rods', () => {
    const platen = { bottom: 0, top: 200 };
    const v = { place: 'instead', boltThread: 'M6', plate: 8, boltLow: 50, boltHigh: 150 };
    const codes = (boltLow: number): readonly string[] =>
      slotIssues({ ...v, boltLow } as Parameters<typeof slotIssues>[0], platen, [30, 100, 170]).map(
        ({ code }) => code,
      );
    expect(codes(65)).toEqual([]);
    // Nut, 10 mm across flats, and rod, 6 mm thick, a plate apart: 10 / 2 + 6 / 2 + 8 mm at least.
    for (const at of [30 + 15.9, 100 - 15.9]) expect(codes(at)).toContain('bolt-at-rod');
  });
});

/** From the least to the greatest y of everything that a body is made of. */
const deepOf = ({ solids }: Body): readonly [number, number] => {
  const ends = solids.flatMap((solid) => {
    const [, y = NaN, , , half = NaN] = solid.kind === 'tree' ? solid.tree.boxes : [];
    return [y - half, y + half];
  });
  return [Math.min(...ends), Math.max(...ends)];
};

describe('a carriage', () => {
  const example = exampleOf('carriage', 'camp');
  const fixture = valueOf(solveCarriage(example.design));
  const q = valueOf(fixture.question());
  const solids = valueOf(fixture.solids?.() ?? { ok: false, issues: [] });

  it('is held by a hand right behind its push block', () => {
    const { bodies } = solids.setUps[0] ?? { bodies: new Map<string, Body>() };
    const [carriage, hand] = ['carriage', 'hand'].map((name) => bodies.get(name));
    if (!carriage || !hand) throw new Error('no bodies');
    const [, back] = deepOf(carriage);
    const [from, to] = deepOf(hand);
    expect(from).toBeCloseTo(back, 6);
    // Hand and wrist: 70 mm (common practice, no source).
    expect(to - from).toBeCloseTo(70, 9);
  });

  it('is looked at with its jaw at either end', () => {
    const ends = solids.assemblies.map(({ placements }) =>
      Math.sign(
        named(placements, 'jaw').frame.origin[0] - named(placements, 'sole').frame.origin[0],
      ),
    );
    expect(new Set(ends)).toEqual(new Set([-1, 1]));
  });

  it('keeps thread between lock nut and knob at its farthest setting, as its parts stand', () => {
    const { plan, l } = q.c;
    const most = Math.max(...plan.settings.map(({ heel }) => heel.extension));
    const z = (name: string): number => {
      const item = q.items.find((one) => one.name === name);
      return item?.frame.origin[2] ?? NaN;
    };
    // The lock nut on the sole is a thin one, 3.2 mm high (ISO 4035, M6).
    const left = z('knob-lock-nut') - most - (z('heel-lock-nut') + 3.2);
    expect(left).toBeGreaterThan(0.5);
    expect(z('heel-lock-nut')).toBeCloseTo(l.soleTop, 9);
    const found = valueOf(fixture.checks()).find(({ id }) => id === 'finished/heel-thread')?.found;
    // The rod is sawn to the next whole millimetre.
    expect(found).toBeGreaterThanOrEqual(left - 1e-6);
    expect(found).toBeLessThan(left + 1);
  });

  type Setting = (typeof q.c.plan.settings)[number];
  const isTurned = ({ clamping }: Setting): boolean =>
    clamping.some(({ turn }) => Math.abs(turn) > 1);

  /** Heights of the tang's lower side over the jaw, every 0.01 mm along it, in the level carriage. */
  const lowerSide = (setting: Setting): readonly number[] => {
    const [middle] = jawFrame(q.c, setting).origin;
    const points = q.c.grips.flatMap((grip) =>
      Array.from({ length: 6001 }, (_, i): Vec3 => {
        const at: Vec3 = [grip.at + (i - 3000) / 100, grip.from, 0];
        return placePoint(bladeInCarriage(q.c, setting, grip.blade), at);
      }),
    );
    const over = points.filter(([x]) => Math.abs(x - middle) <= q.c.v.jawWidth / 2 + 1e-9);
    return over.map(([, , z]) => z);
  };

  it('is lowered at the jaw by what the end of a turned tang sinks', () => {
    const { plan } = q.c;
    const above = (setting: Setting): number =>
      Math.min(...lowerSide(setting)) - jawFrame(q.c, setting).origin[2];
    const turned = plan.settings.filter(isTurned);
    const level = plan.settings.find((setting) => !isTurned(setting));
    if (!level) throw new Error('none level');
    expect(turned.length).toBeGreaterThan(0);
    for (const setting of turned)
      expect(Math.abs(above(setting) - above(level))).toBeLessThan(0.005);
  });

  it('tells the grip of its jaw where it is least, at the higher end of a turned tang', () => {
    const { l, plan } = q.c;
    const grip = (setting: Setting): number =>
      Math.min(l.jawTop + jawFrame(q.c, setting).origin[2], l.earTop) -
      Math.max(...lowerSide(setting));
    const check = valueOf(fixture.checks()).find(({ id }) => id === 'range/grip');
    const at = plan.settings.find(({ id }) => id === check?.pose?.setting);
    if (!check || !at) throw new Error('no grip told');
    expect(isTurned(at)).toBe(true);
    expect(Math.abs((check.found ?? NaN) - grip(at))).toBeLessThan(0.005);
    expect(grip(at)).toBeLessThan(Math.min(...plan.settings.map(grip)) + 0.005);
  });

  it.each([
    // Head to thread: sole and strip of 8 each, and the foot of the angle of 6 over the sole.
    ['camp-90', 16],
    ['marking-60', 22],
  ] as const)(
    'has foot screws that find their thread and do not end in its lead, %s',
    (name, grip) => {
      const steps = valueOf(solveCarriage(exampleOf('carriage', name).design)).assembly.join(' ');
      const told = /two screws M5 x (\d+)(?: \(each on (a|two) washers?\))?: the bar/.exec(steps);
      // A plain washer M5 is 1 mm thick (ISO 7089).
      const rings = { a: 1, two: 2 }[told?.[2] ?? ''] ?? 0;
      const engaged = Number(told?.[1]) - grip - rings;
      // 0.8 diameters (common practice, no source); 9 deep less two threads (DIN 2197, from memory).
      expect(engaged).toBeGreaterThanOrEqual(0.8 * 5);
      expect(engaged).toBeLessThanOrEqual(9 - 2 * 0.8);
    },
  );

  it.each(['camp', 'marking', 'sheepsfoot'])('has screws that end in its jaw, %s', (file) => {
    const { c } = valueOf(valueOf(solveCarriage(exampleOf('carriage', file).design)).question());
    expect(c.screws.jack).toBeLessThanOrEqual(c.l.gripped + c.v.plate);
    expect(c.screws.jack).toBeGreaterThan(c.l.gripped);
  });

  it('stands in slots across the stroke as far as they are wider than its screws', () => {
    const { v, l } = q.c;
    const places = [l.base.front + 20, l.base.back - 20];
    const rest = slotted(
      'x',
      places.map((at) => ({ at, from: -150, to: 150, width: 9 })),
    );
    const codes = (spread: number): readonly string[] => {
      const mount = mountOf({ ...v, mount: 'screws' } as typeof v, l, rest, spread);
      return mount.ok ? [] : mount.issues.map(({ code }) => code);
    };
    // M8 in 9 mm: half a millimetre to either side.
    expect(codes(0.49)).not.toContain('mount-fixed');
    expect(codes(0.51)).toContain('mount-fixed');
  });

  it('stands on a rest with slots wherever the rest shifts from belt to belt', () => {
    const { v, l } = q.c;
    const ends = (spread: number, [from, to]: readonly [number, number]): readonly number[] => {
      const rest = slotted(
        'y',
        [-0.9, 0.9].map((share) => ({ at: share * (l.base.half - 10), from, to, width: 9 })),
      );
      const { at } = valueOf(mountOf(v, l, rest, spread));
      return [Math.min(...at.map(([, y]) => y)), Math.max(...at.map(([, y]) => y))];
    };
    // Slots that end within the base: a screw stays inside them when the rest shifts by 6 mm.
    const within = [l.base.front + 20, l.base.back - 20] as const;
    const [low = NaN, high = NaN] = ends(6, within);
    expect(low - 6).toBeGreaterThanOrEqual(within[0] - 1e-9);
    expect(high + 6).toBeLessThanOrEqual(within[1] + 1e-9);
  });
});

describe('an edge rest', () => {
  const { design } = exampleOf('edge-rest', 'herb');

  it('leaves the lip the room that flutter and splice of the belt leave', () => {
    const found = (of: typeof design): number => {
      const q = valueOf(valueOf(solveEdge(of)).question());
      const room = edgeRanges(q).find(({ id }) => id === 'range/lip/room');
      return room?.found ?? NaN;
    };
    const now = found(design);
    for (const path of ['grinder.belt.splice', 'grinder.belt.flutter']) {
      const key = path.slice(path.lastIndexOf('.') + 1) as 'splice' | 'flutter';
      const more = withValue(design, path, design.grinder.belt[key] + 0.05);
      expect(found(more), path).toBeCloseTo(now - 0.05, 6);
    }
  });

  it('has its push stick where any place of any blade lets it come nearest to the belt', () => {
    const { plan } = valueOf(valueOf(solveEdge(design)).question());
    for (const setting of plan.settings) {
      const height = plan.pushHeight;
      const nearest = nearestContact(setting, height);
      for (const blade of setting.blades)
        for (const place of blade.places) {
          const alone = { ...setting, blades: [{ ...blade, places: [place] }] };
          const there = padContact(alone, height);
          if (Number.isFinite(there)) expect(nearest).toBeLessThanOrEqual(there + 1e-9);
        }
    }
  });
});
