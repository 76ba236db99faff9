import { insideChecks } from '../../../jigs/shared/checks/inside.ts';
import { bodyOf, partForms } from '../../../src/check/assembly.ts';
import { clearance, type Body } from '../../../src/check/distance/index.ts';
import type { Assembly } from '../../../src/check/set-up.ts';
import { place, shift } from '../../../src/geometry/frame.ts';
import { boundingBox } from '../../../src/geometry/loop-measure.ts';
import { scale3, sub3, unit3, type Vec3 } from '../../../src/geometry/vector.ts';
import type { Part, Placement } from '../../../src/model/part.ts';
import { valueOf } from '../../family/examples.ts';

/** Room that parts keep which are not said to touch, and how closely faces lie, mm: as checked. */
const APART = 0.1;
const CLOSED = 0.02;
/** Share of a margin that has to be borne, and how far beyond it must be noticed, mm. */
const BORNE = 0.75;
const BEYOND = 0.01;

const WAYS: readonly Vec3[] = [
  [0, 0, 1],
  [0, 0, -1],
  [1, 0, 0],
  [-1, 0, 0],
  [0, 1, 0],
  [0, -1, 0],
];

const moved = (placement: Placement, by: Vec3): Placement => ({
  ...placement,
  frame: shift(placement.frame, by),
});

/** An assembly at rest, and of it two parts alone, one of them moved. */
const atRest = ({ parts, workshop, placements, faces, up, prefix }: Assembly): Assembly => ({
  parts,
  workshop,
  placements,
  faces,
  up,
  prefix,
});

/** Checks that fail on two parts alone. */
const failing = (assembly: Assembly, one: Placement, other: Placement): string[] =>
  valueOf(insideChecks({ ...assembly, placements: [one, other] }))
    .filter(({ passed }) => !passed)
    .map(({ id }) => id);

const isFace = ({ faces }: Assembly, a: string, b: string): boolean =>
  faces.some(([x, y]) => (x === a && y === b) || (x === b && y === a));

/** Faces that stay closed for the checks although one of them is moved by more than is allowed. */
export const unnoticedFaces = (given: Assembly): { tried: number; wrong: string[] } => {
  const assembly = atRest(given);
  const named = new Map(assembly.placements.map((p) => [p.name, p]));
  const wrong: string[] = [];
  let tried = 0;
  for (const [a, b] of assembly.faces) {
    const [one, other] = [named.get(a), named.get(b)];
    if (!one || !other) continue;
    tried += 1;
    const id = `${assembly.prefix}/${a}/${b}`;
    const open = (by: Vec3): boolean => failing(assembly, moved(one, by), other).includes(id);
    const way = WAYS.find((along) => open(scale3(along, CLOSED + BEYOND)));
    if (way === undefined) wrong.push(`${id}: moved unnoticed`);
    else if (open(scale3(way, BORNE * CLOSED))) wrong.push(`${id}: refused while closed`);
  }
  return { tried, wrong };
};

interface Boxed {
  readonly placement: Placement;
  readonly body: Body;
  readonly low: Vec3;
  readonly high: Vec3;
}

const boxOf = (part: Part, { frame }: Placement): Pick<Boxed, 'low' | 'high'> => {
  const points = part.layers.flatMap(({ profile, from, to }) => {
    const { min, max } = boundingBox(profile.outer);
    return [min[0], max[0]].flatMap((x) =>
      [min[1], max[1]].flatMap((y) => [from, to].map((z) => place(frame, [x, y, z]))),
    );
  });
  const of = (pick: (...values: number[]) => number): Vec3 => [
    pick(...points.map((p) => p[0])),
    pick(...points.map((p) => p[1])),
    pick(...points.map((p) => p[2])),
  ];
  return { low: of(Math.min), high: of(Math.max) };
};

/** What lies between two boxes, mm: never more than between what is in them. */
const between = (a: Boxed, b: Boxed): number =>
  Math.hypot(
    ...([0, 1, 2] as const).map((i) => Math.max(0, a.low[i] - b.high[i], b.low[i] - a.high[i])),
  );

/** The part nearest to one that it must keep clear of, with the gap and the way to it. */
const nearestTo = (
  assembly: Assembly,
  one: Boxed,
  all: readonly Boxed[],
): { other: Boxed; gap: number; way: Vec3 } | undefined => {
  const { name, touches } = one.placement;
  const mayNotTouch = all
    .filter(({ placement: p }) => p.name !== name && !touches.includes(p.name))
    .filter(({ placement: p }) => !p.touches.includes(name) && !isFace(assembly, name, p.name))
    .map((other) => ({ other, least: between(one, other) }))
    .sort((p, q) => p.least - q.least);
  let best: { other: Boxed; gap: number; way: Vec3 } | undefined;
  for (const { other, least } of mayNotTouch) {
    if (best && best.gap <= least) break;
    const found = valueOf(clearance(one.body, other.body, { within: best?.gap ?? Infinity }));
    if (found.state !== 'apart' || found.gap >= (best?.gap ?? Infinity)) continue;
    best = { other, gap: found.gap, way: unit3(sub3(found.pointB, found.pointA)) };
  }
  return best;
};

/** Parts that may come too near to the next one, or run into it, unnoticed. */
export const unnoticedParts = (given: Assembly): { tried: number; wrong: string[] } => {
  const assembly = atRest(given);
  const forms = valueOf(partForms(assembly.parts, assembly.workshop));
  const all = assembly.placements.flatMap((placement): Boxed[] => {
    const part = assembly.parts.find(({ id }) => id === placement.part);
    const body = valueOf(bodyOf(placement.name, [placement], forms));
    return part ? [{ placement, body, ...boxOf(part, placement) }] : [];
  });
  const wrong: string[] = [];
  let tried = 0;
  for (const one of all) {
    const { name } = one.placement;
    const nearest = nearestTo(assembly, one, all);
    // What touches everything there is has nothing to keep clear of.
    if (!nearest) continue;
    tried += 1;
    const other = nearest.other.placement;
    const id = `inside/${name}/${other.name}`;
    const margin = nearest.gap - APART;
    const fails = (by: number): string[] =>
      failing(assembly, moved(one.placement, scale3(nearest.way, by)), other);
    if (fails(BORNE * margin).includes(id)) wrong.push(`${id}: refused within its room`);
    const noticed = fails(margin + BEYOND);
    if (!noticed.includes(id) || !noticed.includes('inside/all'))
      wrong.push(`${id}: moved unnoticed`);
  }
  return { tried, wrong };
};
