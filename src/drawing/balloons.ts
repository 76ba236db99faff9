import { onCircle, angleOf } from '../geometry/arc.ts';
import { sub2, type Vec2 } from '../geometry/vector.ts';
import type { Box } from './box.ts';
import { circleItem, fill, label, line, TEXT } from './items.ts';
import { ownersIn } from './owners.ts';
import type { Face2, Scene } from './scene.ts';
import type { Item } from './sheet.ts';
import { spread } from './spread.ts';

/** Radius of a balloon and distance of neighbouring ones, mm. */
const RADIUS = 4.5;
const PITCH = 2 * RADIUS + 2;
/** Distance of the columns of balloons from the picture, mm. */
const AWAY = 10;
/** How far around a place the same part has to be seen, tried in turn, mm. */
const REACHES = [0.3, 0.8, 1.5, 2.5, 4, 6, 9];
/** So many of a part's faces are searched, the largest first. */
const FACES = 16;
/** Samples across a face when a place to point at is looked for. */
const SAMPLES = 14;

const sizeOf = ({ box }: Face2): number => (box.x1 - box.x0) * (box.y1 - box.y0);

/** Where things are seen in a picture: the sample furthest from places where they are not. */
export const seenIn = (scene: Scene): ((owners: ReadonlySet<string>) => Vec2 | undefined) => {
  const ownerAt = ownersIn(scene);
  return (owners) => mostSeen(scene, (p) => owners.has(ownerAt(p) ?? ''), owners);
};

/** Whether something is not seen at a distance from a place, to any of four sides. */
const isBlocked = ([x, y]: Vec2, reach: number, isSeen: (p: Vec2) => boolean): boolean =>
  !isSeen([x + reach, y]) ||
  !isSeen([x, y + reach]) ||
  !isSeen([x - reach, y]) ||
  !isSeen([x, y - reach]);

/** How many reaches are open around a place; fewer than `least` are not counted out. */
const roomAt = (p: Vec2, least: number, isSeen: (p: Vec2) => boolean): number => {
  // A place that is no better is mostly blocked at the first reach that would make it so.
  if (isBlocked(p, REACHES[least] ?? 0, isSeen)) return 0;
  for (let i = 0; i < REACHES.length; i += 1) if (isBlocked(p, REACHES[i] ?? 0, isSeen)) return i;
  return REACHES.length;
};

const mostSeen = (
  scene: Scene,
  isSeen: (p: Vec2) => boolean,
  owners: ReadonlySet<string>,
): Vec2 | undefined => {
  let best: { p: Vec2; room: number } | undefined;
  const faces = scene.faces
    .filter((face) => owners.has(face.owner))
    .sort((a, b) => sizeOf(b) - sizeOf(a))
    .slice(0, FACES);
  for (const { box } of faces) {
    if (best?.room === REACHES.length) break;
    const step = Math.max(0.3, Math.max(box.x1 - box.x0, box.y1 - box.y0) / SAMPLES);
    for (let x = box.x0 + step / 2; x < box.x1; x += step)
      for (let y = box.y0 + step / 2; y < box.y1; y += step) {
        if (best?.room === REACHES.length || !isSeen([x, y])) continue;
        const room = roomAt([x, y], best?.room ?? 0, isSeen);
        if (!best || room > best.room) best = { p: [x, y], room };
      }
  }
  return best?.p;
};

export interface Pointer {
  readonly text: string;
  readonly at: Vec2;
}

const isCrossing = (a: Vec2, b: Vec2, c: Vec2, d: Vec2): boolean => {
  const side = (p: Vec2, q: Vec2, r: Vec2): number =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
};

/** One column of balloons: kept apart, exchanged until no two leaders cross. */
const column = (pointers: readonly Pointer[], x: number): Item[] => {
  const sorted = [...pointers].sort((p, q) => p.at[1] - q.at[1]);
  const ys = spread(
    sorted.map((p) => p.at[1]),
    PITCH,
  );
  for (let again = true, rounds = 0; again && rounds < 50; rounds++) {
    again = false;
    for (let i = 0; i < sorted.length; i++)
      for (let j = i + 1; j < sorted.length; j++) {
        const [p, q] = [sorted[i], sorted[j]];
        if (!p || !q || !isCrossing([x, ys[i] ?? 0], p.at, [x, ys[j] ?? 0], q.at)) continue;
        [sorted[i], sorted[j]] = [q, p];
        again = true;
      }
  }
  return sorted.flatMap((pointer, i) => balloon([x, ys[i] ?? 0], pointer));
};

const balloon = (centre: Vec2, { text, at }: Pointer): Item[] => {
  const edge = onCircle(centre, RADIUS, angleOf(sub2(at, centre)));
  const dot = Array.from({ length: 12 }, (_, i) => onCircle(at, 0.7, i * 30));
  return [
    line(edge, at, 'dimension'),
    fill(dot, 'ink'),
    circleItem(centre, RADIUS, 'dimension'),
    label([centre[0], centre[1] - TEXT.normal / 2], text, { align: 'centre' }),
  ];
};

/**
 * Item numbers in circles left and right of a picture, with leaders that end in a dot on the
 * part (ISO 6433) and do not cross in their column.
 */
export const balloons = (pointers: readonly Pointer[], box: Box): Item[] => {
  const byX = [...pointers].sort((p, q) => p.at[0] - q.at[0]);
  const half = Math.ceil(byX.length / 2);
  return [...column(byX.slice(0, half), box.x0 - AWAY), ...column(byX.slice(half), box.x1 + AWAY)];
};
