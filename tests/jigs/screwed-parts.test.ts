import { describe, expect, it } from 'vitest';
import { mountOf } from '../../jigs/carriage/layout/mount.ts';
import { solve as solveCarriage } from '../../jigs/carriage/solve.ts';
import { padContact, stickContact } from '../../jigs/edge-rest/place/hand.ts';
import { rangeChecks as edgeRanges } from '../../jigs/edge-rest/checks/ranges.ts';
import { solve as solveEdge } from '../../jigs/edge-rest/solve.ts';
import type { PlacedRest } from '../../jigs/shared/layout/mount.ts';
import { withValue } from '../../src/core/path.ts';
import type { Body } from '../../src/check/distance/index.ts';
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

describe('screws that hold with a nut or an end', () => {
  it.each(
    ['spine-rest', 'edge-rest'].flatMap((family) =>
      examplesOf(family).map((one) => [`${family} ${one.file}`, one] as const),
    ),
  )('fill the nuts of the stop collar, %s', (_, example) => {
    const { place, settings } = solved(example);
    const placements = place(settings[0]?.id ?? '');
    for (const i of ['1', '2']) {
      const [screw, nut] = [
        named(placements, `collar-screw-${i}`),
        named(placements, `collar-nut-${i}`),
      ];
      // Head and nut look away from each other, and an M4 nut is 3.2 mm high (ISO 4032).
      const [a, b] = [screw.frame.z, nut.frame.z];
      expect(a[0] * b[0] + a[1] * b[1] + a[2] * b[2]).toBeCloseTo(-1, 9);
      expect(lengthOf(screw)).toBeGreaterThanOrEqual(away(screw, nut) + 3.2 - 1e-6);
    }
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

  it('stands on a rest with slots wherever the rest shifts from belt to belt', () => {
    const { v, l } = q.c;
    const [from, to] = [l.base.front - 30, l.base.back + 30];
    const rest: PlacedRest = {
      kind: 'table',
      half: 200,
      front: -50,
      back: 300,
      thickness: 10,
      pattern: {
        kind: 'slots',
        axis: 'y',
        slots: [-0.9, 0.9].map((share) => ({ at: share * (l.base.half - 10), from, to, width: 9 })),
      },
      offset: 0,
    };
    const ends = (spread: number, slots: readonly [number, number]): readonly number[] => {
      const pattern = {
        ...rest.pattern,
        slots: (rest.pattern.kind === 'slots' ? rest.pattern.slots : []).map((slot) => ({
          ...slot,
          from: slots[0],
          to: slots[1],
        })),
      } as PlacedRest['pattern'];
      const { at } = valueOf(mountOf(v, l, { ...rest, pattern }, spread));
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
      const nearest = stickContact(setting, height);
      for (const blade of setting.blades)
        for (const place of blade.places) {
          const alone = { ...setting, blades: [{ ...blade, places: [place] }] };
          const there = padContact(alone, height);
          if (Number.isFinite(there)) expect(nearest).toBeLessThanOrEqual(there + 1e-9);
        }
    }
  });
});
