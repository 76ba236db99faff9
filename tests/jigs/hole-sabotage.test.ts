import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { answer } from '../../src/check/answers.ts';
import { bodyOf, partForms, type PartForms } from '../../src/check/assembly.ts';
import { shankOf, type Shank } from '../../src/check/bores.ts';
import {
  clearance,
  createWorkspace,
  shiftBody,
  type Body,
} from '../../src/check/distance/index.ts';
import type { Fit } from '../../src/check/fit.ts';
import { fitOf } from '../../src/check/fits.ts';
import { fabricationChecks } from '../../src/check/rules.ts';
import type { Asked, Assembly, SetUp, Solids } from '../../src/check/set-up.ts';
import { createWorkshop, type Fixture } from '../../src/family/index.ts';
import { localise, shift, turn, type Frame } from '../../src/geometry/frame.ts';
import { boundingBox, loopGap } from '../../src/geometry/loop-measure.ts';
import type { Loop, Profile } from '../../src/geometry/loop.ts';
import { dot3, scale3, sub3, unit3, type Vec3 } from '../../src/geometry/vector.ts';
import type { Hole, Part, Placement, PlatePart, PrintPart } from '../../src/model/part.ts';
import { examplesOf, isByHand, solved, valueOf } from '../family/examples.ts';

/** Share of its margin that a check has to bear, and how far beyond it something is moved, mm. */
const BORNE = 0.9;
const BEYOND = 0.05;

type Drilled = PlatePart | PrintPart;

const isDrilled = (part: Part): part is Drilled => part.kind === 'plate' || part.kind === 'print';

const movedLoop = (loop: Loop, [x, y]: readonly [number, number]): Loop =>
  loop.kind === 'circle'
    ? { ...loop, centre: [loop.centre[0] + x, loop.centre[1] + y] }
    : { ...loop, vertices: loop.vertices.map((v) => ({ ...v, x: v.x + x, y: v.y + y })) };

const middleOf = (loop: Loop): readonly [number, number] => {
  const { min, max } = boundingBox(loop);
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
};

/** Which checks of one part fail, by the last word of their ids. */
const failing = (part: Part, nozzle: number): string[] =>
  fabricationChecks([part], nozzle)
    .filter(({ passed }) => !passed)
    .map(({ id }) => id.slice(id.lastIndexOf('/') + 1));

const withProfile = (part: Drilled, at: number, profile: Profile): Drilled => ({
  ...part,
  layers: part.layers.map((layer, i) => (i === at ? { ...layer, profile } : layer)),
});

/** Ways in the plane, the four along the axes first. */
const WAYS = Array.from({ length: 16 }, (_, i): readonly [number, number] => {
  const a = ((i % 4) * Math.PI) / 2 + (Math.floor(i / 4) * Math.PI) / 8;
  return [Math.cos(a), Math.sin(a)];
});

/** Steps in which a hole is moved until its wall is too thin, and where that is given up, mm. */
const STEP = 0.25;
const FARTHEST = 300;

/** Wall that is left when one hole of a profile is moved, and nothing else is drilled. */
const wallOf = (outer: Loop, hole: Loop, by: readonly [number, number]): number =>
  loopGap(outer, movedLoop(hole, by));

/**
 * Moves one hole towards the outline, the way its wall thins most, until its wall is `beyond` less
 * than allowed: how far is found by halving on the wall itself.
 */
const movedOut = (outer: Loop, hole: Loop, wall: number): readonly [number, number] | undefined => {
  const own = wallOf(outer, hole, [0, 0]);
  const [way] = WAYS.map((by) => ({
    by,
    left: wallOf(outer, hole, [0.05 * by[0], 0.05 * by[1]]),
  })).sort((p, q) => p.left - q.left);
  if (way === undefined || way.left >= own) return undefined;
  const at = (by: number): number => wallOf(outer, hole, [by * way.by[0], by * way.by[1]]);
  let high = 0;
  while (at(high) > wall && high < FARTHEST) high += STEP;
  let low = high - STEP;
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (at(middle) > wall) low = middle;
    else high = middle;
  }
  return [high * way.by[0], high * way.by[1]];
};

/** Holes whose move to the edge, or whose drilling too small, goes unnoticed. */
const unnoticedHoles = (parts: readonly Part[], nozzle: number): string[] =>
  parts.filter(isDrilled).flatMap((part) => {
    const word = part.kind === 'plate' ? 'web' : 'wall';
    const [web, drill] = [word, 'hole'].map((end) =>
      fabricationChecks([part], nozzle).find(({ id }) => id.endsWith(`/${end}`)),
    );
    const wrong: string[] = [];
    part.layers.forEach(({ profile: { outer, holes } }, at) =>
      holes.forEach((hole, i) => {
        const least = web?.atLeast ?? NaN;
        const alone = (share: number): string[] => {
          const wall = wallOf(outer, hole, [0, 0]);
          const by = movedOut(outer, hole, wall - share * (wall - least));
          if (by === undefined) return ['not moved'];
          const moved = withProfile(part, at, { outer, holes: [movedLoop(hole, by)] });
          return failing({ ...moved, layers: moved.layers.slice(at, at + 1) }, nozzle);
        };
        const name = `${part.id}: ${middleOf(hole)
          .map((v) => v.toFixed(1))
          .join(' ')}`;
        if (alone(BORNE).includes(word)) wrong.push(`${name} fails too early`);
        if (!alone(1 + BEYOND / least).includes(word)) wrong.push(`${name} moved unnoticed`);
        // In the whole part the same check, and no other, is the one that fails.
        const by = movedOut(outer, hole, least - BEYOND) ?? [0, 0];
        const all = holes.map((other, j) => (j === i ? movedLoop(other, by) : other));
        const found = failing(withProfile(part, at, { outer, holes: all }), nozzle);
        if (found.join() !== word) wrong.push(`${name}: ${found.join()} instead of ${word}`);
      }),
    );
    for (const hole of part.holes) {
      const sized = (size: number): string[] =>
        failing(
          { ...part, holes: part.holes.map((h) => (h === hole ? { ...h, size } : h)) },
          nozzle,
        );
      const limit = drill?.atLeast ?? NaN;
      if (sized(limit).length > 0) wrong.push(`${part.id} ${hole.id}: refused at its limit`);
      if (sized(limit - 0.01).join() !== 'hole') wrong.push(`${part.id} ${hole.id}: too small`);
    }
    return wrong;
  });

/** A shank in a hole of another part: which hole, how much room, and the ways across it. */
interface Seated {
  readonly key: string;
  readonly room: number;
  readonly held: boolean;
  readonly ways: readonly Vec3[];
}

const PARALLEL = 1e-6;

/** The hole of a part that a shank passes, by their axes alone. */
const holeOf = (
  screw: Part,
  shank: Shank,
  standing: Placement,
  part: Part,
  other: Placement,
): Seated | undefined => {
  if (!('holes' in part)) return undefined;
  if (Math.abs(dot3(standing.frame.z, other.frame.z)) < 1 - PARALLEL) return undefined;
  const [x, y, z] = localise(other.frame, standing.frame.origin);
  const way = Math.sign(dot3(standing.frame.z, other.frame.z));
  const ends = (of: Part, from: number, sign: number): [number, number] => {
    const all = of.layers.flatMap((layer) => [from + sign * layer.from, from + sign * layer.to]);
    return [Math.min(...all), Math.max(...all)];
  };
  const [[low, high], [bottom, top]] = [ends(screw, z, way), ends(part, 0, 1)];
  // What ends on the face of a part is not in its hole.
  if (Math.min(high, top) - Math.max(low, bottom) < 0.5) return undefined;
  const isIn = (hole: Hole): boolean => {
    const { min, max } = boundingBox(hole.loop);
    return x > min[0] && x < max[0] && y > min[1] && y < max[1];
  };
  const hole = part.holes.find(isIn);
  if (!hole) return undefined;
  const { min, max } = boundingBox(hole.loop);
  const [wide, deep] = [max[0] - min[0], max[1] - min[1]];
  const across: Vec3[] = [
    ...(wide <= deep + 1e-6 ? [[1, 0, 0] as const, [-1, 0, 0] as const] : []),
    ...(deep <= wide + 1e-6 ? [[0, 1, 0] as const, [0, -1, 0] as const] : []),
  ];
  return {
    key: `${standing.part} in ${hole.id} of ${part.id}`,
    room: (hole.size - shank.diameter) / 2,
    held: hole.size - shank.diameter < 1e-6 || hole.thread !== undefined,
    ways: across.map((way) => turn(other.frame, way)),
  };
};

/** Fits of shanks in holes that stay unnoticed when the hole is moved across by more than its room. */
const unnoticedFits = ({ parts, placements }: Assembly): { tried: number; wrong: string[] } => {
  const workshop = createWorkshop();
  const forms: PartForms = valueOf(partForms(parts, workshop));
  const work = createWorkspace();
  const partOf = (placement: Placement): Part | undefined =>
    parts.find(({ id }) => id === placement.part);
  const done = new Set<string>();
  const wrong: string[] = [];
  for (const one of placements) {
    const part = partOf(one);
    const shank = part && shankOf(part);
    if (!part || !shank) continue;
    for (const other of placements) {
      const plate = partOf(other);
      if (!plate || !one.touches.includes(other.name)) continue;
      const seated = holeOf(part, shank, one, plate, other);
      if (!seated || done.has(seated.key)) continue;
      done.add(seated.key);
      const fitAt = (by: Vec3): Fit['state'] => {
        const frame: Frame = shift(one.frame, by);
        const placement = { ...one, frame };
        const body = valueOf(bodyOf(one.name, [placement], forms));
        const still = valueOf(bodyOf(other.name, [other], forms));
        return valueOf(
          fitOf(
            work,
            { part, placement, body, solid: frame },
            { part: plate, placement: other, body: still, solid: other.frame },
            0.02,
            workshop,
          ),
        ).state;
      };
      const room = seated.held ? 0.05 : Math.max(0, seated.room);
      if (seated.ways.some((way) => fitAt(scale3(way, BORNE * room)) === 'crossing'))
        wrong.push(`${seated.key}: refused within its room`);
      if (!seated.ways.some((way) => fitAt(scale3(way, room + 2 * BEYOND)) === 'crossing'))
        wrong.push(`${seated.key}: moved unnoticed`);
    }
  }
  return { tried: done.size, wrong };
};

/** The wheel as a body of its own, and what stands nearest to it of all that must keep clear. */
const nearestTo = (setUp: SetUp, wheel: Body) =>
  setUp.asked
    .flatMap((asked: Asked) => {
      const { rule } = asked;
      const a = setUp.bodies.get(rule.a);
      if (rule.kind !== 'clear' || rule.b !== 'wheels' || !a) return [];
      const found = clearance(a, wheel);
      if (!found.ok || found.value.state !== 'apart') return [];
      const { gap, pointA, pointB } = found.value;
      return [{ asked, slack: gap - rule.gap, way: unit3(sub3(pointA, pointB)) }];
    })
    .sort((p, q) => p.slack - q.slack)[0];

/** Wheels that can be moved into the fixture unnoticed, one by one. */
const unnoticedWheels = ({ setUps }: Solids): { tried: number; wrong: string[] } => {
  const [setUp] = setUps.filter(({ asked }) => asked.some(({ rule }) => rule.b === 'wheels'));
  const wheels = setUp?.bodies.get('wheels');
  if (!setUp || !wheels) return { tried: 0, wrong: [] };
  const wrong = wheels.solids.flatMap((solid, i): string[] => {
    const wheel: Body = { ...wheels, solids: [solid] };
    const nearest = nearestTo(setUp, wheel);
    if (!nearest) return [`wheel ${String(i + 1)}: nothing must keep clear of it`];
    const failsAt = (by: number): boolean => {
      const moved = shiftBody(wheel, scale3(nearest.way, by));
      const bodies = new Map([...setUp.bodies, ['wheels', moved]]);
      return answer([nearest.asked], bodies, setUp.told).some(({ passed }) => !passed);
    };
    return [
      ...(failsAt(BORNE * nearest.slack)
        ? [`wheel ${String(i + 1)}: refused within its room`]
        : []),
      ...(failsAt(nearest.slack + BEYOND) ? [] : [`wheel ${String(i + 1)}: moved unnoticed`]),
    ];
  });
  return { tried: wheels.solids.length, wrong };
};

for (const family of Object.values(registry.families)) {
  describe(`holes and wheels of ${family.id}, moved one by one`, () => {
    const [example] = examplesOf(family.id);
    let kept: Fixture | undefined;
    const fixture = (): Fixture => {
      if (!example) throw new Error('no example');
      return (kept ??= solved(example));
    };
    const solids = (): Solids => {
      const told = fixture().solids?.();
      if (!told) throw new Error('no solids');
      return valueOf(told);
    };

    it('a hole too near the edge, or too small, is refused by its own check alone', () => {
      const nozzle = example?.design.making.prints.nozzle ?? NaN;
      const [first, ...others] = examplesOf(family.id);
      // Of the other designs the parts that the first has not: guides, clamp bars, slotted ribs.
      const parts = new Map(first ? valueOf(fixture().parts()).map((part) => [part.id, part]) : []);
      for (const other of others)
        for (const part of valueOf(solved(other).parts()))
          if (!parts.has(part.id)) parts.set(part.id, part);
      expect(unnoticedHoles([...parts.values()], nozzle)).toEqual([]);
    });

    it('a hole beside its screw by more than its room does not fit', ({ skip }) => {
      if (isByHand(fixture())) skip();
      const [assembly] = solids().assemblies;
      if (!assembly) throw new Error('no assembly');
      const { tried, wrong } = unnoticedFits(assembly);
      expect(tried).toBeGreaterThan(3);
      expect(wrong).toEqual([]);
    });

    it('a wheel moved by its room is run into', ({ skip }) => {
      if (isByHand(fixture())) skip();
      const { tried, wrong } = unnoticedWheels(solids());
      expect(tried).toBe(example?.design.grinder.wheels.length);
      expect(wrong).toEqual([]);
    });
  });
}
