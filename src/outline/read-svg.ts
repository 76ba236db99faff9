import { XMLParser } from 'fast-xml-parser';
import { SVGPathData } from 'svg-pathdata';
import { radians } from '../core/units.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { after, IDENTITY, mapped, stretched, transformOf, type Affine } from './affine.ts';
import {
  cubicSpan,
  DEEPEST,
  ellipseSpan,
  lineSpan,
  MOST_SPANS,
  polylineSpans,
  TooMuch,
  type Drawn,
  type DrawnPath,
  type Span,
} from './drawn.ts';

/** Millimetres of the absolute length units of CSS; pixels have no agreed size in drawings. */
const UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

/** Elements that draw nothing themselves. */
const SILENT = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'marker',
  'pattern',
  'linearGradient',
  'radialGradient',
  'style',
  'title',
  'desc',
  'metadata',
  'script',
  '#text',
  '#comment',
  '?xml',
  'sodipodi:namedview',
]);

type Attributes = Readonly<Record<string, string>>;
interface Element {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly unknown[];
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

/** An entry of the parser's ordered form: one key for the name, `:@` for the attributes. */
const elementOf = (node: unknown): Element | undefined => {
  if (!isRecord(node)) return undefined;
  const name = Object.keys(node).find((key) => key !== ':@');
  const children = name === undefined ? undefined : node[name];
  if (name === undefined || !Array.isArray(children)) return undefined;
  const attributes = isRecord(node[':@']) ? node[':@'] : {};
  return {
    name: name.replace(/^svg:/, ''),
    attributes: Object.fromEntries(
      Object.entries(attributes).map(([key, value]) => [key, String(value)]),
    ),
    children,
  };
};

const numbersIn = (text: string | undefined): number[] =>
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
        const [cos, sin] = [Math.cos(radians(c.xRot)), Math.sin(radians(c.xRot))];
        const span = ellipseSpan(
          [cX, cY],
          [rX * cos, rX * sin],
          [-rY * sin, rY * cos],
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

/** What an element draws; undefined for one that is not understood. */
const shapesOf = ({ name, attributes: a }: Element): DrawnPath[] | undefined => {
  const n = (key: string): number => numbersIn(a[key])[0] ?? 0;
  switch (name) {
    case 'path':
      return pathsIn(a['d'] ?? '');
    case 'line':
      return [{ spans: [lineSpan([n('x1'), n('y1')], [n('x2'), n('y2')])], closed: false }];
    case 'polyline':
    case 'polygon': {
      const closed = name === 'polygon';
      return [{ spans: polylineSpans(pointsIn(a['points']), closed), closed }];
    }
    case 'circle':
      return [round(n('cx'), n('cy'), n('r'), n('r'))];
    case 'ellipse':
      return [round(n('cx'), n('cy'), n('rx'), n('ry'))];
    case 'rect': {
      if (n('rx') > 0 || n('ry') > 0) return undefined;
      const [x, y, w, h] = [n('x'), n('y'), n('width'), n('height')];
      const corners: Vec2[] = [
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ];
      return [{ spans: polylineSpans(corners, true), closed: true }];
    }
    default:
      return undefined;
  }
};

/** Millimetres of a user unit, where width or height say so and the view box agrees. */
const unitOf = ({ attributes }: Element): number | null => {
  const box = numbersIn(attributes['viewBox']);
  for (const [key, at] of [
    ['width', 2],
    ['height', 3],
  ] as const) {
    const size = /^\s*([\d.]+)\s*([a-z]+)\s*$/.exec(attributes[key] ?? '');
    const unit = UNITS[size?.[2] ?? ''];
    if (size === null || unit === undefined) continue;
    const drawn = box[at] ?? Number(size[1]);
    if (drawn > 0) return (Number(size[1]) * unit) / drawn;
  }
  return null;
};

/** The curves of an SVG file. What is not an outline (text, images, copies) is counted, not drawn. */
export const readSvg = (content: string): Drawn => {
  const tree: unknown = new XMLParser({
    preserveOrder: true,
    ignoreAttributes: false,
    attributeNamePrefix: '',
    processEntities: false,
    parseTagValue: false,
    parseAttributeValue: false,
    maxNestedTags: DEEPEST,
  }).parse(content);
  const roots = (Array.isArray(tree) ? tree : []).map(elementOf);
  const root = roots.find((element) => element?.name === 'svg');
  const paths: DrawnPath[] = [];
  const ignored = new Map<string, number>();
  let spans = 0;
  const walk = (element: Element, outer: Affine): void => {
    const { name, attributes, children } = element;
    if (SILENT.has(name) || attributes['display'] === 'none') return;
    if (/display\s*:\s*none/.test(attributes['style'] ?? '')) return;
    const own = transformOf(attributes['transform'] ?? '');
    const skip = (): void => void ignored.set(name, (ignored.get(name) ?? 0) + 1);
    if (own === undefined) return skip();
    const affine = after(outer, own);
    if (name === 'g' || name === 'a' || element === root) {
      for (const child of children) {
        const inner = elementOf(child);
        if (inner) walk(inner, affine);
      }
      return;
    }
    const shapes = shapesOf(element);
    if (shapes === undefined) return skip();
    spans += shapes.reduce((sum, shape) => sum + shape.spans.length, 0);
    if (spans > MOST_SPANS) throw new TooMuch();
    paths.push(...shapes.map((shape) => mapped(affine, shape)));
  };
  // SVG counts y downwards.
  if (root) walk(root, after(stretched(1, -1), IDENTITY));
  return { paths, unit: root ? unitOf(root) : null, ignored };
};
