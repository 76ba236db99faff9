import { cos, sin } from '../../core/trigonometry.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Arranged } from './arrange.ts';
import type { Picture, PictureLabel } from './picture.ts';

/** Width of a character of a name, and what a line of it takes in height, px. */
const CHARACTER = 7.4;
const LINE = 15;
/** Height of a figure on a dimension line and its width a character, px. */
const FIGURE = 20;
const FIGURE_CHARACTER = 9;
/** How far off its point a name may stand, px. */
const DISTANCES = [16, 26, 38, 52, 70, 90, 115];
/** Directions that are tried around it. */
const WAYS = 16;

/** What it costs a place that a name covers something there, or needs a leader to it. */
const COST = { letter: 1000, figure: 500, crossed: 200, line: 24, leader: 6, each: 0.2 };

interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A name where it stands, px, with the leader to what it names where it had to step aside. */
export interface Letter {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: PictureLabel['anchor'];
  readonly leader: readonly [Vec2, Vec2] | null;
}

interface Place extends Letter {
  readonly box: Box;
  readonly cost: number;
}

const meet = (a: Box, b: Box): boolean => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1;

/** Whether a stretch from a to b runs through a box: clipped against its four sides. */
const runsThrough = (box: Box, a: Vec2, b: Vec2): boolean => {
  let [from, to] = [0, 1];
  const cut = (start: number, way: number, low: number, high: number): boolean => {
    if (way === 0) return start > low && start < high;
    const [first, second] = [(low - start) / way, (high - start) / way];
    from = Math.max(from, Math.min(first, second));
    to = Math.min(to, Math.max(first, second));
    return from < to;
  };
  return cut(a[0], b[0] - a[0], box.x0, box.x1) && cut(a[1], b[1] - a[1], box.y0, box.y1);
};

const crosses = (box: Box, line: readonly Vec2[]): boolean =>
  line.some((b, i) => {
    const a = line[i - 1];
    return a !== undefined && runsThrough(box, a, b);
  });

const boxOf = (x: number, y: number, width: number, anchor: PictureLabel['anchor']): Box => {
  const x0 = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { x0, y0: y - LINE + 3, x1: x0 + width, y1: y + 3 };
};

/** Where the name would like to stand, then around what it names, farther and farther off. */
const placesOf = (label: PictureLabel, own: Vec2, at: Vec2): Place[] => {
  const width = label.text.length * CHARACTER;
  const liked = own[1] + (label.above ? -9 : label.level ? 4 : 0);
  const place = (
    x: number,
    y: number,
    anchor: PictureLabel['anchor'],
    leader: Place['leader'],
    cost: number,
  ): Place => ({ text: label.text, x, y, anchor, leader, cost, box: boxOf(x, y, width, anchor) });
  const around = DISTANCES.flatMap((far) =>
    Array.from({ length: WAYS }, (_, i): Place => {
      const turn = (2 * Math.PI * i) / WAYS;
      const [across, up] = [cos(turn), sin(turn)];
      const end: Vec2 = [at[0] + far * across, at[1] - far * up];
      const anchor = across > 0.1 ? 'start' : across < -0.1 ? 'end' : 'middle';
      const gap = anchor === 'start' ? 3 : anchor === 'end' ? -3 : 0;
      const drop = Math.abs(up) < 0.9 ? 4 : up > 0 ? -3 : LINE - 2;
      const cost = COST.leader + COST.each * far;
      return place(end[0] + gap, end[1] + drop, anchor, [at, end], cost);
    }),
  );
  return [place(own[0], liked, label.anchor, null, 0), ...around];
};

/**
 * Stands the names of a drawing where none covers another or a figure, and as few lines as can be:
 * at its own place where that is free, else aside on a leader. Those that lie well stay where they are.
 */
export const lettersOf = (picture: Picture, fit: Arranged): readonly Letter[] => {
  const lines = picture.lines.map(({ points, closed }) => {
    const run = points.map(fit.place);
    return closed && run[0] ? [...run, run[0]] : run;
  });
  const dims = fit.measures.map(({ a, b }) => [a, b]);
  const figures = fit.measures.map(({ at: [x, y], text, measure }): Box => {
    const long = text.length * FIGURE_CHARACTER;
    const [w, h] = measure.along === 'y' ? [FIGURE, long] : [long, FIGURE];
    return { x0: x - w / 2, y0: y - h / 2, x1: x + w / 2, y1: y + h / 2 };
  });
  const sheet: Box = { x0: 1, y0: 1, x1: fit.width - 1, y1: fit.height - 1 };
  const inside = ({ x0, y0, x1, y1 }: Box): boolean =>
    x0 >= sheet.x0 && y0 >= sheet.y0 && x1 <= sheet.x1 && y1 <= sheet.y1;
  /** What is drawn where the name would stand. */
  const drawn = ({ box, cost }: Place): number => {
    if (!inside(box)) return Infinity;
    const over = figures.filter((figure) => meet(figure, box)).length;
    const crossed = [...lines, ...dims].filter((line) => crosses(box, line)).length;
    return cost + COST.figure * over + COST.line * crossed;
  };
  /** What other names add to it. */
  const beside = (taken: readonly Place[], { box, leader }: Place): number =>
    taken.reduce((sum, other) => {
      const over = meet(other.box, box) ? COST.letter : 0;
      const run = leader && runsThrough(other.box, ...leader) ? COST.crossed : 0;
      const under = other.leader && runsThrough(box, ...other.leader) ? COST.crossed : 0;
      return sum + over + run + under;
    }, 0);
  const waiting = picture.labels
    .map((label, i) => {
      const places = placesOf(label, fit.place(label.at), fit.place(label.names ?? label.at));
      return { i, places, liked: places[0] ? drawn(places[0]) : 0 };
    })
    .sort((a, b) => a.liked - b.liked);
  const taken: Place[] = [];
  const stood: Letter[] = [];
  for (const { i, places } of waiting) {
    let best: Place | undefined;
    let least = Infinity;
    for (const place of places) {
      if (place.cost >= least) continue;
      const cost = drawn(place) + beside(taken, place);
      if (cost < least) [best, least] = [place, cost];
    }
    const chosen = best ?? places[0];
    if (!chosen) continue;
    taken.push(chosen);
    stood[i] = chosen;
  }
  return stood;
};
