import type { Item, Sheet } from '../../src/drawing/sheet.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';

/**
 * Reads a plate back from its drawing as a shop would: the shape of the outline from the lines,
 * every NUMBER from a dimension, a callout or the hole table. It shares no code with the drawing
 * modules and never sees the model. Whatever is not dimensioned is reported as missing.
 */
export interface ReadPlate {
  /** Outline: sharp corners from the datum in order, each with the radius that rounds it (0: none). */
  readonly corners: readonly { readonly at: Vec2; readonly radius: number }[];
  /** Radii of arcs that are no fillets, in the order of the outline. */
  readonly freeRadii: readonly number[];
  readonly circle?: { readonly at: Vec2; readonly diameter: number };
  readonly holes: readonly ReadHole[];
  readonly thickness: number;
  readonly missing: readonly string[];
}

export interface ReadHole {
  readonly id: string;
  readonly at: Vec2;
  readonly size: number;
  /** Overall length and direction of a slot. */
  readonly slot?: { readonly length: number; readonly angle: number };
  /** Width and height of a rectangle along the axes. */
  readonly rectangle?: Vec2;
  readonly note: string;
  readonly purpose: string;
}

type Of<K extends Item['kind']> = Extract<Item, { kind: K }>;

/** Paper distance that counts as "on", mm. */
const NEAR = 0.02;

const gap = (a: Vec2, b: Vec2): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const only = <K extends Item['kind']>(items: readonly Item[], kind: K): Of<K>[] =>
  items.filter((item): item is Of<K> => item.kind === kind);

/** A value and the place on the paper it belongs to. */
interface Tied {
  readonly paper: number;
  readonly value: number;
}

const NUMBER = /^-?\d+(?:\.\d+)?$/;

/** The other end of a chain of dimension lines that begins at a point. */
const follow = (lines: readonly Of<'line'>[], start: Vec2, used: Set<Of<'line'>>): Vec2 => {
  const next = lines.find(
    (l) => !used.has(l) && (gap(l.a, start) < 1e-6 || gap(l.b, start) < 1e-6),
  );
  if (!next) return start;
  used.add(next);
  return follow(lines, gap(next.a, start) < 1e-6 ? next.b : next.a, used);
};

/** Running dimensions: numbers at the free end of a chain of thin lines. */
const ordinatesOf = (items: readonly Item[], axis: 0 | 1): Tied[] => {
  const lines = only(items, 'line').filter((l) => l.stroke === 'dimension');
  return only(items, 'text')
    .filter((t) => NUMBER.test(t.text) && t.angle === (axis === 0 ? 90 : 0) && t.align !== 'centre')
    .flatMap((t) => {
      // The line ends one millimetre before the text, in the middle of its height.
      const mid = t.height / 2;
      const way = t.align === 'right' ? 1 : -1;
      const end: Vec2 =
        axis === 0 ? [t.at[0] - mid, t.at[1] + way] : [t.at[0] + way, t.at[1] + mid];
      const line = lines.find((l) => gap(l.b, end) < NEAR);
      if (!line) return [];
      const foot = follow(lines, line.b, new Set());
      return [{ paper: foot[axis], value: Number(t.text) }];
    });
};

export interface Linear {
  readonly axis: 0 | 1;
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly isDiameter: boolean;
  readonly at: Vec2;
}

/** Linear dimensions: a number over a thin line on which two arrowheads point at the limits. */
export const linearsOf = (items: readonly Item[]): Linear[] => {
  const lines = only(items, 'line').filter((l) => l.stroke === 'dimension');
  const tips = only(items, 'fill').flatMap((f) =>
    f.tone === 'ink' && f.points.length === 3 && f.points[0] ? [f.points[0]] : [],
  );
  return only(items, 'text').flatMap((t) => {
    const parsed = /^\(?(Ø?)(\d+(?:\.\d+)?)\)?$/.exec(t.text);
    if (!parsed || t.align !== 'centre') return [];
    const axis = t.angle === 0 ? 0 : 1;
    const across = axis === 0 ? 1 : 0;
    const line = lines.find(
      (l) =>
        Math.abs(l.a[across] - l.b[across]) < 1e-9 &&
        Math.abs(Math.abs(l.a[across] - t.at[across]) - 1.65) < 0.5 &&
        Math.min(l.a[axis], l.b[axis]) <= t.at[axis] &&
        Math.max(l.a[axis], l.b[axis]) >= t.at[axis],
    );
    if (!line) return [];
    const on = tips
      .filter(
        (p) =>
          Math.abs(p[across] - line.a[across]) < 1e-6 &&
          p[axis] > Math.min(line.a[axis], line.b[axis]) - 1e-6 &&
          p[axis] < Math.max(line.a[axis], line.b[axis]) + 1e-6,
      )
      .map((p) => p[axis])
      .sort((p, q) => p - q);
    const [from, to] = on;
    if (from === undefined || to === undefined || on.length !== 2) return [];
    const isDiameter = parsed[1] === 'Ø';
    return [{ axis, from, to, value: Number(parsed[2]), isDiameter, at: t.at }];
  });
};

interface Edge {
  readonly a: Vec2;
  readonly b: Vec2;
  readonly arc?: Of<'arc'>;
}

const arcEnd = (arc: Of<'arc'>, angle: number): Vec2 => [
  arc.centre[0] + arc.radius * Math.cos((angle * Math.PI) / 180),
  arc.centre[1] + arc.radius * Math.sin((angle * Math.PI) / 180),
];

/** Closed chains of visible edges. */
const chainsOf = (items: readonly Item[]): Edge[][] => {
  const rest: Edge[] = [
    ...only(items, 'line')
      .filter((l) => l.stroke === 'visible')
      .map((l) => ({ a: l.a, b: l.b })),
    ...only(items, 'arc')
      .filter((a) => a.stroke === 'visible')
      .map((arc) => ({ a: arcEnd(arc, arc.from), b: arcEnd(arc, arc.to), arc })),
  ];
  const chains: Edge[][] = [];
  while (rest.length > 0) {
    const first = rest.shift();
    if (!first) break;
    const chain = [first];
    for (;;) {
      const end = chain.at(-1)?.b ?? first.b;
      const i = rest.findIndex((e) => gap(e.a, end) < 1e-4 || gap(e.b, end) < 1e-4);
      const next = rest[i];
      if (!next) break;
      rest.splice(i, 1);
      chain.push(gap(next.a, end) < 1e-4 ? next : { ...next, a: next.b, b: next.a });
    }
    if (gap(chain.at(-1)?.b ?? first.b, first.a) < 1e-4) chains.push(chain);
  }
  return chains;
};

/** Lower left corner of the box around edges, arcs to their furthest points. */
const lowerLeft = (edges: readonly Edge[]): Vec2 => {
  const points = edges.flatMap(({ a, b, arc }) => {
    if (!arc) return [a, b];
    const isOn = (angle: number): boolean =>
      (((angle - arc.from) % 360) + 360) % 360 <= (((arc.to - arc.from) % 360) + 360) % 360;
    return [a, b, ...[180, 270].filter(isOn).map((angle) => arcEnd(arc, angle))];
  });
  return [Math.min(...points.map((p) => p[0])), Math.min(...points.map((p) => p[1]))];
};

const meet = (p: Edge, q: Edge): Vec2 => {
  const [u, v] = [
    [p.b[0] - p.a[0], p.b[1] - p.a[1]],
    [q.b[0] - q.a[0], q.b[1] - q.a[1]],
  ] as const;
  const t = ((q.a[0] - p.a[0]) * v[1] - (q.a[1] - p.a[1]) * v[0]) / (u[0] * v[1] - u[1] * v[0]);
  return [p.a[0] + t * u[0], p.a[1] + t * u[1]];
};

const isFillet = (before: Edge, edge: Edge, after: Edge): boolean => {
  if (!edge.arc || before.arc || after.arc) return false;
  const distance = ({ a, b }: Edge, c: Vec2): number =>
    Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])) / gap(a, b);
  const { centre, radius } = edge.arc;
  const sweep = (((edge.arc.to - edge.arc.from) % 360) + 360) % 360;
  return (
    sweep < 175 &&
    Math.abs(distance(before, centre) - radius) < NEAR &&
    Math.abs(distance(after, centre) - radius) < NEAR
  );
};

/** Whether a point lies within the angle of an arc. */
const faces = (arc: Of<'arc'>, p: Vec2): boolean => {
  const angle = (Math.atan2(p[1] - arc.centre[1], p[0] - arc.centre[0]) * 180) / Math.PI;
  const turn = (to: number): number => (((to - arc.from) % 360) + 360) % 360;
  return turn(angle) <= turn(arc.to);
};

/** Radius callouts: paper radius of the arc the arrow touches, and the value written. */
const radiiOf = (items: readonly Item[]): Tied[] => {
  const arcs = only(items, 'arc').filter((a) => a.stroke === 'visible');
  const tips = only(items, 'fill').flatMap((f) =>
    f.tone === 'ink' && f.points.length === 3 && f.points[0] ? [f.points[0]] : [],
  );
  const lines = only(items, 'line').filter((l) => l.stroke === 'dimension');
  return only(items, 'text').flatMap((t) => {
    const parsed = /^(?:\d+× )?R(\d+(?:\.\d+)?)$/.exec(t.text);
    if (!parsed) return [];
    // The text stands over the level end of a leader whose other end carries an arrow.
    const tip = lines
      .filter(
        (l) =>
          Math.abs(l.a[1] - l.b[1]) < 1e-9 &&
          t.at[1] - l.a[1] > 0.5 &&
          t.at[1] - l.a[1] < 2 &&
          Math.abs((l.a[0] + l.b[0]) / 2 - t.at[0]) < 0.1,
      )
      .flatMap((landing) => lines.filter((l) => l !== landing && gap(l.b, landing.a) < 1e-6))
      .flatMap((stem) => tips.filter((p) => gap(p, stem.a) < 1e-6))[0];
    if (!tip) return [];
    const arc = arcs.find((a) => Math.abs(gap(tip, a.centre) - a.radius) < NEAR && faces(a, tip));
    return arc ? [{ paper: arc.radius, value: Number(parsed[1]) }] : [];
  });
};

const tableHoles = (items: readonly Item[]): ReadHole[] => {
  const texts = only(items, 'text');
  const head = (name: string): Of<'text'> | undefined =>
    texts.find((t) => t.bold && (t.text === name || t.text === name.split(' ')[0]));
  const [id, x, y, size, depth, purpose] = ['Id', 'X', 'Y', 'Size', 'Thread, depth', 'Purpose'].map(
    head,
  );
  if (!id || !x || !y || !size || !depth || !purpose) return [];
  const inColumn = (column: Of<'text'>): Of<'text'>[] =>
    texts.filter((t) => !t.bold && t.at[0] === column.at[0] && t.at[1] < column.at[1]);
  const ids = inColumn(id)
    .filter((t) => inColumn(x).some((other) => other.at[1] === t.at[1]))
    .sort((a, b) => b.at[1] - a.at[1]);
  return ids.map((name, i) => {
    const below = ids[i + 1]?.at[1] ?? name.at[1] - 12;
    const cell = (column: Of<'text'>): string =>
      inColumn(column)
        .filter((t) => t.at[1] <= name.at[1] + 1e-9 && t.at[1] > below + 1e-9)
        .sort((a, b) => b.at[1] - a.at[1])
        .map((t) => t.text)
        .join(' ');
    const at: Vec2 = [Number(cell(x)), Number(cell(y))];
    const written = cell(size);
    const round = /^Ø(\d+(?:\.\d+)?)$/.exec(written);
    const slot = /^slot (\d+(?:\.\d+)?) × (\d+(?:\.\d+)?), (\d+(?:\.\d+)?)°$/.exec(written);
    const box = /^(\d+(?:\.\d+)?) × (\d+(?:\.\d+)?)$/.exec(written);
    return {
      id: name.text,
      at,
      size: Number(round?.[1] ?? slot?.[1] ?? box?.[1] ?? NaN),
      ...(slot ? { slot: { length: Number(slot[2]), angle: Number(slot[3]) } } : {}),
      ...(box ? { rectangle: [Number(box[1]), Number(box[2])] as const } : {}),
      note: cell(depth),
      purpose: cell(purpose),
    };
  });
};

/** The value tied to a place, or NaN with a complaint. */
const lookUp = (tied: readonly Tied[], paper: number, what: string, missing: string[]): number => {
  const [found] = tied
    .filter((t) => Math.abs(t.paper - paper) < NEAR)
    .sort((p, q) => Math.abs(p.paper - paper) - Math.abs(q.paper - paper));
  if (!found) missing.push(`${what} at ${paper.toFixed(2)} on the paper`);
  return found?.value ?? NaN;
};

export const readPlate = (sheets: readonly Sheet[]): ReadPlate => {
  const items = sheets[0]?.items ?? [];
  const missing: string[] = [];
  const datum = only(items, 'circle').find(
    (c) => Math.abs(c.radius - 1.7) < 1e-9 && c.stroke === 'dimension',
  )?.centre;
  if (!datum) return { corners: [], freeRadii: [], holes: [], thickness: NaN, missing: ['datum'] };
  const linears = linearsOf(items);
  const tiedTo = (axis: 0 | 1): Tied[] => [
    { paper: datum[axis], value: 0 },
    ...ordinatesOf(items, axis),
    ...linears
      .filter((l) => l.axis === axis && Math.abs(l.from - datum[axis]) < NEAR)
      .map((l) => ({ paper: l.to, value: l.value })),
  ];
  const [xs, ys] = [tiedTo(0), tiedTo(1)];
  const radii = radiiOf(items);
  const holes = sheets.flatMap((sheet) => tableHoles(sheet.items));
  const heights = linears.filter((l) => l.axis === 1).sort((a, b) => b.at[1] - a.at[1]);
  const thickness = heights[0]?.value ?? NaN;

  const chain = chainsOf(items).find((edges) => gap(lowerLeft(edges), datum) < NEAR);
  if (!chain) {
    const circle = only(items, 'circle').find(
      (c) =>
        c.stroke === 'visible' &&
        Math.abs(c.centre[0] - c.radius - datum[0]) < NEAR &&
        Math.abs(c.centre[1] - c.radius - datum[1]) < NEAR,
    );
    const width = linears.find((l) => l.isDiameter);
    if (!circle || !width) missing.push('outline');
    const at: Vec2 = circle
      ? [
          lookUp(xs, circle.centre[0], 'x of the centre', missing),
          lookUp(ys, circle.centre[1], 'y of the centre', missing),
        ]
      : [NaN, NaN];
    return {
      corners: [],
      freeRadii: [],
      circle: { at, diameter: width?.value ?? NaN },
      holes,
      thickness,
      missing,
    };
  }
  const n = chain.length;
  const around = (i: number): Edge => chain[(i + n) % n] ?? { a: [0, 0], b: [0, 0] };
  const fillets = chain.map((edge, i) => isFillet(around(i - 1), edge, around(i + 1)));
  const corners: { at: Vec2; radius: number }[] = [];
  const freeRadii: number[] = [];
  chain.forEach((edge, i) => {
    const radius = edge.arc ? lookUp(radii, edge.arc.radius, 'radius', missing) : 0;
    const isRounded = fillets[i] === true;
    if (edge.arc && !isRounded) freeRadii.push(radius);
    if (!isRounded && fillets[(i + n - 1) % n] === true) return;
    const p = isRounded ? meet(around(i - 1), around(i + 1)) : edge.a;
    const at: Vec2 = [
      lookUp(xs, p[0], 'x of a corner', missing),
      lookUp(ys, p[1], 'y of a corner', missing),
    ];
    corners.push({ at, radius: isRounded ? radius : 0 });
  });
  return { corners, freeRadii, holes, thickness, missing };
};
