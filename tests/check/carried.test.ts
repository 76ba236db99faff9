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
import { keptPair } from '../../src/check/kept-pair.ts';
import { CHECK_CHORD, createWorkshop, type Workshop } from '../../src/check/workshop.ts';
import { compose, frame, WORLD, type Frame } from '../../src/geometry/frame.ts';
import { rectangle } from '../../src/geometry/loop.ts';
import { cross3, unit3, type Vec3 } from '../../src/geometry/vector.ts';
import type { StockPart } from '../../src/model/part.ts';
import { seeded } from '../../src/setup/random.ts';
import { valueOf } from '../family/examples.ts';
import { steel } from './shapes.ts';

const bar = (id: string, x: number, y: number, z: number): StockPart => ({
  ...steel,
  kind: 'stock',
  id,
  name: id,
  section: '',
  holes: [],
  crossHoles: [],
  layers: [{ profile: { outer: rectangle([0, 0], [x, y]), holes: [] }, from: 0, to: z }],
});

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
