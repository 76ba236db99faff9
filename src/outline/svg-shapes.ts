import { SVGPathData } from 'svg-pathdata';
import { cos, sin } from '../core/trigonometry.ts';
import { radians } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import {
  cubicSpan,
  ellipseSpan,
  lineSpan,
  MOST_SPANS,
  polylineSpans,
  TooMuch,
  type DrawnPath,
  type Span,
} from './drawn.ts';

/** Millimetres of the absolute length units of CSS. */
export const UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  q: 0.25,
};

/** Millimetres of a pixel of CSS; drawings that state sizes in pixels do not agree on one. */
export const PIXEL = 25.4 / 96;

export type Attributes = Readonly<Record<string, string>>;
export interface Element {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly unknown[];
}

export const numbersIn = (text: string | undefined): number[] =>
  (text ?? '').match(/[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/g)?.map(Number) ?? [];

const pointsIn = (text: string | undefined): Vec2[] => {
  const list = numbersIn(text);
  return Array.from({ length: Math.floor(list.length / 2) }, (_, i): Vec2 => [
    list[2 * i] ?? 0,
    list[2 * i + 1] ?? 0,
  ]);
};

/** The subpaths of path data: lines, cubics and arcs kept exact. */
const pathsIn = (data: string): DrawnPath[] => {
  const { commands } = new SVGPathData(data)
    .toAbs()
    .normalizeHVZ(false)
    .normalizeST()
    .qtToC()
    .annotateArcs();
  if (commands.length > MOST_SPANS) throw new TooMuch();
  const paths: { spans: Span[]; closed: boolean }[] = [];
  let [start, now]: [Vec2, Vec2] = [
    [0, 0],
    [0, 0],
  ];
  const add = (to: Vec2, span: Span): void => {
    let open = paths.at(-1);
    if (open === undefined || open.closed) paths.push((open = { spans: [], closed: false }));
    open.spans.push(span);
    now = to;
  };
  for (const c of commands) {
    if (c.type === SVGPathData.CLOSE_PATH) {
      if (Math.hypot(now[0] - start[0], now[1] - start[1]) > 0) add(start, lineSpan(now, start));
      const open = paths.at(-1);
      if (open) open.closed = true;
      now = start;
    } else if (c.type === SVGPathData.MOVE_TO) {
      now = start = [c.x, c.y];
      paths.push({ spans: [], closed: false });
    } else if (c.type === SVGPathData.LINE_TO) {
      add([c.x, c.y], lineSpan(now, [c.x, c.y]));
    } else if (c.type === SVGPathData.CURVE_TO) {
      add([c.x, c.y], cubicSpan(now, [c.x1, c.y1], [c.x2, c.y2], [c.x, c.y]));
    } else if (c.type === SVGPathData.ARC) {
      const { cX, cY, phi1 = 0, phi2 = 0, rX, rY } = c;
      const to: Vec2 = [c.x, c.y];
      if (cX === undefined || cY === undefined || rX === 0 || rY === 0) add(to, lineSpan(now, to));
      else {
        const [cosine, sine] = [cos(radians(c.xRot)), sin(radians(c.xRot))];
        const span = ellipseSpan(
          [cX, cY],
          [rX * cosine, rX * sine],
          [-rY * sine, rY * cosine],
          radians(phi1),
          radians(phi2),
        );
        add(to, span);
      }
    }
  }
  return paths.filter(({ spans }) => spans.length > 0);
};

const round = (x: number, y: number, rx: number, ry: number): DrawnPath => ({
  closed: true,
  spans: [0, 1, 2, 3].map((i) =>
    ellipseSpan([x, y], [rx, 0], [0, ry], (i * Math.PI) / 2, ((i + 1) * Math.PI) / 2),
  ),
});

/** A length in user units; null where it hangs on something else, as a percentage does. */
export const lengthIn = (text: string): number | null => {
  const found = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([a-z]*)\s*$/i.exec(text);
  const name = found?.[2]?.toLowerCase() ?? '';
  const unit = name === '' || name === 'px' ? PIXEL : UNITS[name];
  return found === null || unit === undefined ? null : (Number(found[1]) * unit) / PIXEL;
};

/** A rectangle, its corners rounded by quarters of an ellipse (SVG 2, 10.2). */
const rectangle = (x: number, y: number, w: number, h: number, rx: number, ry: number) => {
  const corner = (cx: number, cy: number, quarter: number): Span =>
    ellipseSpan([cx, cy], [rx, 0], [0, ry], (quarter * Math.PI) / 2, ((quarter + 1) * Math.PI) / 2);
  const side = (a: Vec2, b: Vec2): Span[] =>
    Math.hypot(b[0] - a[0], b[1] - a[1]) > 0 ? [lineSpan(a, b)] : [];
  const rounded = rx > 0 && ry > 0;
  const [r, s] = rounded ? [rx, ry] : [0, 0];
  const turn = (cx: number, cy: number, quarter: number): Span[] =>
    rounded ? [corner(cx, cy, quarter)] : [];
  const spans = [
    ...side([x + r, y], [x + w - r, y]),
    ...turn(x + w - r, y + s, 3),
    ...side([x + w, y + s], [x + w, y + h - s]),
    ...turn(x + w - r, y + h - s, 0),
    ...side([x + w - r, y + h], [x + r, y + h]),
    ...turn(x + r, y + h - s, 1),
    ...side([x, y + h - s], [x, y + s]),
    ...turn(x + r, y + s, 2),
  ];
  return { spans, closed: true };
};

/** The attributes of an element as lengths; null where one is not understood. */
const lengthsOf = (attributes: Attributes, keys: readonly string[]): number[] | null => {
  const list = keys.map((key) => lengthIn(attributes[key] ?? '0'));
  return list.every((length) => length !== null) ? list : null;
};

/** Radii of a rectangle: one alone counts for both, and none passes half a side. */
const radiiOf = ({ rx, ry }: Attributes, w: number, h: number): [number, number] | null => {
  const given = (text: string | undefined): number | null | undefined =>
    text === undefined || text.trim() === 'auto' ? undefined : lengthIn(text);
  const [x, y] = [given(rx), given(ry)];
  if (x === null || y === null) return null;
  return [Math.min(x ?? y ?? 0, w / 2), Math.min(y ?? x ?? 0, h / 2)];
};

/** What an element draws; undefined for one that is not understood. */
export const shapesOf = ({ name, attributes: a }: Element): DrawnPath[] | undefined => {
  switch (name) {
    case 'path':
      return pathsIn(a['d'] ?? '');
    case 'line': {
      const ends = lengthsOf(a, ['x1', 'y1', 'x2', 'y2']);
      if (ends === null) return undefined;
      const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = ends;
      return [{ spans: [lineSpan([x1, y1], [x2, y2])], closed: false }];
    }
    case 'polyline':
    case 'polygon': {
      const closed = name === 'polygon';
      return [{ spans: polylineSpans(pointsIn(a['points']), closed), closed }];
    }
    case 'circle':
    case 'ellipse': {
      const radii = name === 'circle' ? ['r', 'r'] : ['rx', 'ry'];
      const sizes = lengthsOf(a, ['cx', 'cy', ...radii]);
      if (sizes === null) return undefined;
      const [cx = 0, cy = 0, rx = 0, ry = 0] = sizes;
      return rx > 0 && ry > 0 ? [round(cx, cy, rx, ry)] : [];
    }
    case 'rect': {
      const box = lengthsOf(a, ['x', 'y', 'width', 'height']);
      if (box === null) return undefined;
      const [x = 0, y = 0, w = 0, h = 0] = box;
      const radii = radiiOf(a, w, h);
      if (radii === null) return undefined;
      return w > 0 && h > 0 ? [rectangle(x, y, w, h, ...radii)] : [];
    }
    default:
      return undefined;
  }
};
