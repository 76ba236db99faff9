import { describe, expect, it } from 'vitest';
import {
  buttonScrewPart,
  capScrew,
  capScrewPart,
  countersunkScrewPart,
  diameterOf,
  dowelPinPart,
  materialOf,
  MATERIALS,
  nut,
  nutPart,
  setScrewPart,
  threadedRodPart,
  THREADS,
  washerPart,
  type Thread,
} from '../../src/hardware/index.ts';
import { audit } from '../../src/model/audit.ts';
import { massOf, stackBox, stackVolume } from '../../src/model/measure.ts';
import type { HardwarePart } from '../../src/model/part.ts';
import { meshOf } from '../../src/model/solid.ts';

const made = <T>(result: { ok: true; value: T } | { ok: false; issues: readonly unknown[] }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};

const everyPart = (threads: readonly Thread[] = THREADS): HardwarePart[] =>
  threads.flatMap((thread) => {
    const length = capScrew(thread).lengths[3] ?? 0;
    return [
      made(capScrewPart(thread, length)),
      made(countersunkScrewPart(thread, 30)),
      made(setScrewPart(thread, 16)),
      made(threadedRodPart(thread, 137)),
      nutPart(thread),
      nutPart(thread, 'thin'),
      nutPart(thread, 'lock'),
      washerPart(thread),
      washerPart(thread, 'large'),
    ];
  });

describe('bought parts', () => {
  it('have sockets as deep as the standard asks, with metal below them', () => {
    // ISO 4762, least depth of the socket t: M3 1.3, M4 2, M5 2.5, M6 3, M8 4 (open tables).
    const depths = { M3: 1.3, M4: 2, M5: 2.5, M6: 3, M8: 4 } as const;
    for (const [thread, depth] of Object.entries(depths) as [keyof typeof depths, number][]) {
      const { layers } = made(capScrewPart(thread, 20));
      const socket = layers.filter(({ profile }) => profile.holes.length > 0);
      expect(socket.map(({ from, to }) => to - from)).toEqual([expect.closeTo(depth, 9)]);
      expect(socket[0]?.to).toBe(Math.max(...layers.map(({ to }) => to)));
    }
  });

  it('meshes watertight, with one hole in nuts and washers', () => {
    for (const part of [
      ...everyPart(['M3', 'M8']),
      made(buttonScrewPart('M6', 20)),
      made(dowelPinPart(6, 40)),
    ]) {
      const seen = audit(made(meshOf(part.layers)));
      expect([part.designation, seen.sound, seen.shells]).toEqual([part.designation, true, 1]);
      const ring = /nut|washer/i.test(part.name);
      expect([part.designation, seen.genus]).toEqual([part.designation, ring ? 1 : 0]);
      expect(Math.abs(seen.volume / stackVolume(part.layers) - 1)).toBeLessThan(1e-3);
    }
  });

  it('has ids that name files, all different, and standard designations', () => {
    const parts = everyPart();
    for (const { id } of parts) expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(new Set(parts.map(({ id }) => id)).size).toBe(parts.length);
    expect(made(capScrewPart('M6', 20)).designation).toBe('ISO 4762 - M6 x 20 - 8.8');
    expect(made(capScrewPart('M6', 20)).id).toBe('iso-4762-m6-x-20-8-8');
    expect(nutPart('M8', 'thin').designation).toBe('ISO 4035 - M8 - 04');
    expect(washerPart('M5').designation).toBe('ISO 7089 - 5 - 200 HV');
  });

  it('stands as documented: head up from 0, shank down, the rest up from 0', () => {
    const screw = stackBox(made(capScrewPart('M6', 20)).layers);
    expect(screw.min).toEqual([-5.11, -5.11, -20]);
    expect(screw.max).toEqual([5.11, 5.11, 6]);
    const sunk = stackBox(made(countersunkScrewPart('M6', 20)).layers);
    expect([sunk.min[2], sunk.max[2]]).toEqual([-20, 0]);
    expect(sunk.max[0]).toBeCloseTo(13.44 / 2, 9);
    const hex = stackBox(nutPart('M6').layers);
    expect([hex.min[2], hex.max[2]]).toEqual([0, 5.2]);
    expect(hex.max[0]).toBeCloseTo(nut('M6').acrossCorners / 2, 9);
    expect(hex.max[1]).toBeCloseTo(5, 9);
    expect(stackBox(made(dowelPinPart(6, 40)).layers).max).toEqual([3, 3, 40]);
  });

  // Published piece weights, from memory: M6 x 20 cap screw 6 g, M6 nut 2.3 g, M6 washer 1.0 g.
  // The envelope is heavier than a threaded screw, never lighter, and by less than 40 %.
  it('weighs about what the pieces weigh', () => {
    const ratios = [
      massOf(made(capScrewPart('M6', 20))) / 6,
      massOf(nutPart('M6')) / 2.3,
      massOf(washerPart('M6')) / 1.02,
    ];
    for (const ratio of ratios) {
      expect(ratio).toBeGreaterThan(0.95);
      expect(ratio).toBeLessThan(1.4);
    }
  });

  it('refuses lengths that are not made, naming those that are', () => {
    const result = capScrewPart('M6', 21);
    expect(result.ok).toBe(false);
    expect(result.issues[0]?.message).toContain('21 mm');
    expect(result.issues[0]?.message).toContain('16, 20, 25');
    expect(dowelPinPart(6, 61).ok).toBe(false);
    expect(threadedRodPart('M6', 10.5).ok).toBe(false);
    expect(threadedRodPart('M6', 0).ok).toBe(false);
  });

  it('keeps every step of a countersunk head around its cone', () => {
    for (const thread of THREADS) {
      const { layers } = made(countersunkScrewPart(thread, 30));
      for (const { profile, to } of layers) {
        if (profile.outer.kind !== 'circle' || profile.outer.radius <= diameterOf(thread) / 2)
          continue;
        // 90 degrees: the cone narrows as much as it goes down.
        const cone = diameterOf(thread) / 2 + to - (layers[0]?.to ?? 0);
        expect(profile.outer.radius).toBeGreaterThanOrEqual(cone - 1e-9);
      }
    }
  });
});

describe('materials', () => {
  // kg/m^3: Gere, Mechanics of Materials (steel, 6061, brass); EN 10088 7900 to 8000; plastic
  // density tables; PLA, ASA, polyamide and plywood from memory.
  it.each([
    ['steel', 7850, 7850],
    ['stainless', 7900, 8000],
    ['aluminium', 2700, 2700],
    ['brass', 8400, 8600],
    ['PETG', 1260, 1280],
    ['ABS', 1020, 1080],
    ['POM', 1410, 1430],
    ['UHMW-PE', 930, 940],
    ['PLA', 1240, 1240],
    ['plywood', 650, 700],
  ] as const)('%s is %d to %d kg/m^3', (id, least, most) => {
    const density = materialOf(id).density * 1000;
    expect(density).toBeGreaterThanOrEqual(least);
    expect(density).toBeLessThanOrEqual(most);
  });

  it('names every material and what it serves for', () => {
    for (const { name, uses } of MATERIALS) {
      expect(name.length).toBeGreaterThan(2);
      expect(uses.length).toBeGreaterThan(0);
    }
  });
});
