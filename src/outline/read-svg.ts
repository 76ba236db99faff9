import { XMLParser } from 'fast-xml-parser';
import { after, IDENTITY, mapped, moved, stretched, transformOf, type Affine } from './affine.ts';
import { DEEPEST, MOST_SPANS, TooMuch, type Drawn, type DrawnPath } from './drawn.ts';
import { lengthIn, numbersIn, PIXEL, shapesOf, UNITS, type Element } from './svg-shapes.ts';

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

/** Millimetres of a user unit, where width or height say so and the view box agrees. */
const unitOf = ({ attributes }: Element): number | null => {
  const box = numbersIn(attributes['viewBox']);
  for (const [key, at] of [
    ['width', 2],
    ['height', 3],
  ] as const) {
    const size = /^\s*([\d.]+)\s*([a-z]+)\s*$/i.exec(attributes[key] ?? '');
    const unit = UNITS[size?.[2]?.toLowerCase() ?? ''];
    if (size === null || unit === undefined) continue;
    const drawn = box[at];
    // Without a view box a user unit is a pixel of CSS (SVG 2, 8.2 and 8.9).
    if (drawn === undefined) return PIXEL;
    if (drawn > 0) return (Number(size[1]) * unit) / drawn;
  }
  return null;
};

/** Every element that has an id, for `use`; the first of an id counts. */
const named = (element: Element, found = new Map<string, Element>()): Map<string, Element> => {
  const { id } = element.attributes;
  if (id !== undefined && !found.has(id)) found.set(id, element);
  for (const child of element.children) {
    const inner = elementOf(child);
    if (inner) named(inner, found);
  }
  return found;
};

const hidden = ({ attributes: { display, style = '' } }: Element): boolean =>
  display === 'none' || /display\s*:\s*none/.test(style);

/** The map of an element into the one around it; undefined where it is not understood. */
const placeOf = ({ attributes: { transform = '', style = '' } }: Element): Affine | undefined =>
  /(?:^|;)\s*(?:transform|rotate|scale|translate)\s*:/.test(style)
    ? undefined
    : transformOf(transform);

/** The curves of an SVG file. What is not an outline (text, images) is counted, not drawn. */
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
  const ids = root ? named(root) : new Map<string, Element>();
  const paths: DrawnPath[] = [];
  const ignored = new Map<string, number>();
  let work = 0;
  const walk = (element: Element, outer: Affine, depth: number): void => {
    const { name, attributes, children } = element;
    if (SILENT.has(name) || hidden(element)) return;
    if ((work += 1) > MOST_SPANS || depth > DEEPEST) throw new TooMuch();
    const own = placeOf(element);
    const skip = (): void => void ignored.set(name, (ignored.get(name) ?? 0) + 1);
    if (own === undefined) return skip();
    const affine = after(outer, own);
    if (name === 'use') {
      // A copy, moved by x and y (SVG 2, 5.5); one that brings a view of its own is not followed.
      const href = attributes['href'] ?? attributes['xlink:href'] ?? '';
      const of = href.startsWith('#') ? ids.get(href.slice(1)) : undefined;
      const [x, y] = [lengthIn(attributes['x'] ?? '0'), lengthIn(attributes['y'] ?? '0')];
      if (!of || SILENT.has(of.name) || of.name === 'svg' || x === null || y === null)
        return skip();
      walk(of, after(affine, moved(x, y)), depth + 1);
      return;
    }
    if (name === 'g' || name === 'a' || element === root) {
      for (const child of children) {
        const inner = elementOf(child);
        if (inner) walk(inner, affine, depth + 1);
      }
      return;
    }
    const shapes = shapesOf(element);
    if (shapes === undefined) return skip();
    work += shapes.reduce((sum, shape) => sum + shape.spans.length, 0);
    if (work > MOST_SPANS) throw new TooMuch();
    paths.push(...shapes.map((shape) => mapped(affine, shape)));
  };
  // SVG counts y downwards.
  if (root) walk(root, after(stretched(1, -1), IDENTITY), 0);
  return { paths, unit: root ? unitOf(root) : null, ignored };
};
