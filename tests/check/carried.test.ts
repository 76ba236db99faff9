import { describe, expect, it } from 'vitest';
import {
  blockOf,
  blockOver,
  blockRoom,
  boxRoom,
  seenFrom,
  standingIn,
  type CarriedPart,
} from '../../src/check/carried.ts';
import {
  checkPair,
  clearance,
  createWorkspace,
  type Body,
  type Motion,
} from '../../src/check/distance/index.ts';
import { keptFit } from '../../src/check/kept-fit.ts';
import { keptPair } from '../../src/check/kept-pair.ts';
import { CHECK_CHORD } from '../../src/check/chord.ts';
import { createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import { compose, frame, WORLD, type Frame } from '../../src/geometry/frame.ts';
import { rectangle } from '../../src/geometry/loop.ts';
import { cross3, unit3, type Vec3 } from '../../src/geometry/vector.ts';
import type { StockPart } from '../../src/model/part.ts';
import { seeded } from '../../src/setup/random.ts';
import { valueOf } from '../family/examples.ts';
import { bar } from './shapes.ts';

const carried = (workshop: Workshop, part: StockPart, name: string, at: Frame): CarriedPart => ({
  part,
  placement: { part: part.id, name, frame: at, carrier: 'ground', touches: [] },
  formed: valueOf(workshop.formed(part)),
});

const random = seeded(7);
const between = (low: number, high: number): number => low + random() * (high - low);
const anyFrame = (far: number): Frame => {
  const any = (): Vec3 => [between(-1, 1), between(-1, 1), between(-1, 1)];
  const x = unit3(any());
  const y = unit3(cross3(x, any()));
  return frame([between(-far, far), between(-far, far), between(-far, far)], x, y);
};

describe('parts carried as one', () => {
  it('keep at least the room of the boxes around them, by the kernel on random bars', () => {
    const workshop = createWorkshop();
    let [apart, far] = [0, 0];
    const standing = (part: CarriedPart): Body => ({
      name: part.placement.name,
      solids: [part.formed.at(part.placement.frame)],
      chordError: CHECK_CHORD,
    });
    for (let i = 0; i < 150; i += 1) {
      const sizes = (): [number, number, number] => [
        between(2, 30),
        between(2, 30),
        between(2, 30),
      ];
      const one = carried(workshop, bar('one', ...sizes()), 'one', anyFrame(40));
      const other = carried(workshop, bar('other', ...sizes()), 'other', anyFrame(40));
      const seen = seenFrom(one, other);
      const [a, b] = [standingIn(one, WORLD, ''), standingIn(other, seen, '')];
      const [mine, theirs] = [a.solids[0], b.solids[0]];
      if (!mine || !theirs) throw new Error('no solids');
      const room = boxRoom(mine, theirs, seen);
      const found = valueOf(clearance(a, b));
      if (found.state === 'beyond') throw new Error('not measured');
      // The chords that the kernel takes off, and its slack.
      expect(room).toBeLessThan(Math.max(0, found.gap + 0.012));
      const [block, there] = [one, other].map(blockOf);
      if (!block || !there) throw new Error('no boxes');
      const upright = blockRoom(block, there);
      expect(upright).toBeLessThan(Math.max(0, found.gap + 0.012));
      if (upright > 0) far += 1;
      // Both in two places at once: the way of the one is past the other.
      const ways = [0, 1].map((): Motion =>
        [anyFrame(20), anyFrame(20)].map((pose) => ({ kind: 'still', label: '', pose })),
      );
      const [here = [], off = []] = ways;
      const [over, past] = [blockOver(block, here), blockOver(there, off)];
      const moved = valueOf(
        clearance({ ...standing(one), motion: here }, { ...standing(other), motion: off }),
      );
      if (!over || !past || moved.state === 'beyond') throw new Error('not measured');
      expect(blockRoom(over, past)).toBeLessThan(Math.max(0, moved.gap + 0.012));
      if (room > 0) apart += 1;
    }
    expect(apart).toBeGreaterThan(50);
    expect(far).toBeGreaterThan(30);
  });

  it('have no one box around a way that sweeps', () => {
    const still: Motion = [{ kind: 'still', label: '', pose: WORLD }];
    const sweep: Motion = [{ kind: 'glide', label: '', from: WORLD, to: frame([9, 0, 0]) }];
    const block = [
      [0, 0, 0],
      [1, 1, 1],
    ] as const;
    expect(blockOver(block, still)).toEqual(block);
    expect(blockOver(block, [...still, ...sweep])).toBeUndefined();
  });

  it('are told where they are carried to, and how far they are measured each time', () => {
    const workshop = createWorkshop();
    const part = bar('bar', 30, 10, 5);
    const pair = [
      carried(workshop, part, 'first', WORLD),
      // 0.3 off along y and along z: the boxes tell less than the 0.42 between the edges.
      carried(workshop, part, 'second', frame([0, 10.3, 5.3])),
    ] as const;
    const rule = { kind: 'clear', a: 'first', b: 'second', gap: 0.1 } as const;
    const ask = (within: number, label: string, pose: Frame) =>
      keptPair(workshop, createWorkspace(), pair, rule, within, { label, pose }).clearance;
    expect(ask(0.35, 'one', WORLD)?.state).toBe('beyond');
    for (const [label, x] of [
      ['one', 0],
      ['two', 100],
    ] as const) {
      const found = ask(0.5, label, frame([x, 0, 0]));
      if (found?.state !== 'apart') throw new Error('not measured');
      expect(found.at.label).toBe(label);
      for (const point of [found.pointA, found.pointB]) {
        expect(point[0]).toBeGreaterThanOrEqual(x - 1e-9);
        expect(point[0]).toBeLessThanOrEqual(x + 30 + 1e-9);
      }
    }
  });

  it('fit as the two that are asked about do, whatever else the first was held against', () => {
    const workshop = createWorkshop();
    const one = carried(workshop, bar('one', 30, 10, 5), 'one', WORLD);
    const at = frame([0, 0, 5]);
    const thin = carried(workshop, bar('thin', 30, 10, 5), 'thin', at);
    // The same place, but 2 mm of it reach down into the first.
    const sunk: StockPart = {
      ...bar('sunk', 30, 10, 5),
      layers: [{ profile: { outer: rectangle([0, 0], [30, 10]), holes: [] }, from: -2, to: 5 }],
    };
    const deep = carried(workshop, sunk, 'deep', at);
    const state = (other: CarriedPart): string =>
      valueOf(keptFit(workshop, createWorkspace(), one, other, 0.02)).state;
    expect([thin, deep, thin].map(state)).toEqual(['seated', 'crossing', 'seated']);
  });

  it('are told as they stand, whatever was kept of them elsewhere', () => {
    const workshop = createWorkshop();
    const part = bar('bar', 30, 10, 5);
    const rule = { kind: 'clear', gap: 0.1 } as const;
    for (const [gap, pass] of [
      [0.3, true],
      [0.05, false],
    ] as const) {
      for (const [i, turn] of [WORLD, anyFrame(50), anyFrame(50)].entries()) {
        const names = [`first-${String(i)}`, `second-${String(i)}`] as const;
        const pair = [
          carried(workshop, part, names[0], turn),
          carried(workshop, part, names[1], compose(turn, frame([0, 0, 5 + gap]))),
        ] as const;
        const named = { ...rule, a: names[0], b: names[1] };
        const kept = keptPair(workshop, createWorkspace(), pair, named, 0.5);
        const [a, b] = pair.map((one) => standingIn(one, one.placement.frame, ''));
        if (!a || !b) throw new Error('no pair');
        const anew = checkPair(a, b, named, { within: 0.5 });
        expect([kept.a, kept.b, kept.pass, anew.pass]).toEqual([...names, pass, pass]);
        if (kept.clearance?.state !== 'apart' || anew.clearance?.state !== 'apart')
          throw new Error('not measured');
        expect(kept.clearance.gap).toBeCloseTo(gap - 0.01, 2);
        // The points lie on the faces where the parts stand: as far apart as these.
        const { pointA, pointB } = kept.clearance;
        expect(Math.hypot(...pointA.map((x, k) => x - (pointB[k] ?? NaN)))).toBeCloseTo(gap, 6);
        if (!pass) expect(kept.issues[0]?.message).toContain(`second ${String(i)}`);
      }
    }
  });
});
