import { MM_PER_INCH } from '../../core/units.ts';
import { bulgeOf, onCircle } from '../../geometry/arc.ts';
import { circle, path, type Loop } from '../../geometry/loop.ts';
import type { Segment } from '../../geometry/segment.ts';
import { distance2, type Vec2 } from '../../geometry/vector.ts';

/** One entity of a DXF as its group codes say, in file units. */
export interface DxfEntity {
  readonly type: string;
  readonly layer: string;
  readonly tags: readonly (readonly [number, string])[];
}

/** The parts of a DXF that a cutting shop's reader looks at. */
export interface DxfContent {
  readonly header: ReadonlyMap<string, string>;
  readonly comments: readonly string[];
  readonly entities: readonly DxfEntity[];
}

/** A contour as read, mm; a chain that does not return to its start is not closed. */
export interface Contour {
  readonly loop: Loop;
  readonly closed: boolean;
}

const pairs = (dxf: string): [number, string][] => {
  const lines = dxf.split(/\r?\n/);
  const found: [number, string][] = [];
  for (let i = 0; i + 1 < lines.length; i += 2)
    found.push([Number.parseInt(lines[i] ?? '', 10), (lines[i + 1] ?? '').trim()]);
  return found;
};

/** Reads group codes; knows nothing of how they were written. Never throws. */
export const readDxf = (dxf: string): DxfContent => {
  const header = new Map<string, string>();
  const comments: string[] = [];
  const entities: { type: string; layer: string; tags: [number, string][] }[] = [];
  let section = '';
  let variable = '';
  let naming = false;
  for (const [code, value] of pairs(dxf)) {
    if (code === 999) comments.push(value);
    else if (code === 0) {
      naming = value === 'SECTION';
      if (value === 'ENDSEC') section = '';
      else if (section === 'ENTITIES') entities.push({ type: value, layer: '', tags: [] });
    } else if (naming && code === 2) {
      section = value;
      naming = false;
    } else if (section === 'HEADER') {
      if (code === 9) variable = value;
      else if (!header.has(variable)) header.set(variable, value);
    } else if (section === 'ENTITIES') {
      const entity = entities.at(-1);
      if (entity === undefined) continue;
      if (code === 8) entity.layer = value;
      else entity.tags.push([code, value]);
    }
  }
  return { header, comments, entities };
};

const value = (entity: DxfEntity, code: number): number =>
  Number(entity.tags.find(([c]) => c === code)?.[1] ?? 0);

/** Whether every elevation of the entity is nil. */
export const isFlat = (entity: DxfEntity): boolean =>
  [30, 31, 38, 39].every((code) => value(entity, code) === 0);

/** Millimetres of one file unit, by $INSUNITS, or by the assumption where the flavour has none. */
export const scaleOf = (content: DxfContent, assumed: 'mm' | 'in'): number => {
  const units = content.header.get('$INSUNITS');
  return units === '1' || (units === undefined && assumed === 'in') ? MM_PER_INCH : 1;
};

const polyline = (entity: DxfEntity, scale: number): Contour => {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const [code, text] of entity.tags) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: Number(text) * scale, y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = Number(text) * scale;
    else if (code === 42 && last) last.bulge = Number(text);
  }
  return { loop: path(vertices), closed: (value(entity, 70) & 1) === 1 };
};

const loose = (entity: DxfEntity, scale: number): Segment => {
  const at = (x: number, y: number): Vec2 => [value(entity, x) * scale, value(entity, y) * scale];
  if (entity.type === 'LINE') return { a: at(10, 20), b: at(11, 21), bulge: 0 };
  const [start, end] = [value(entity, 50), value(entity, 51)];
  const radius = value(entity, 40) * scale;
  return {
    a: onCircle(at(10, 20), radius, start),
    b: onCircle(at(10, 20), radius, end),
    bulge: bulgeOf((((end - start) % 360) + 360) % 360),
  };
};

/** End points that differ by less are shared, mm: the files carry nine decimals. */
const SHARED = 1e-6;

/** Joins loose lines and arcs end to end. */
const chains = (pieces: readonly Segment[]): Contour[] => {
  const left = [...pieces];
  const found: Contour[] = [];
  for (let piece = left.shift(); piece !== undefined; piece = left.shift()) {
    const start = piece.a;
    let end = piece.b;
    const vertices = [{ x: start[0], y: start[1], bulge: piece.bulge }];
    while (distance2(end, start) >= SHARED) {
      const here = end;
      const touches = (p: Vec2): boolean => distance2(p, here) < SHARED;
      const index = left.findIndex(({ a, b }) => touches(a) || touches(b));
      const next = left.splice(index, index < 0 ? 0 : 1)[0];
      if (next === undefined) break;
      const forward = touches(next.a);
      vertices.push({ x: here[0], y: here[1], bulge: forward ? next.bulge : -next.bulge });
      end = forward ? next.b : next.a;
    }
    const closed = distance2(end, start) < SHARED;
    if (!closed) vertices.push({ x: end[0], y: end[1], bulge: 0 });
    found.push({ loop: path(vertices), closed });
  }
  return found;
};

/** The contours that entities form, in mm; loose lines and arcs are joined end to end. */
export const contoursOf = (entities: readonly DxfEntity[], scale: number): Contour[] => {
  const whole = entities.flatMap((entity): Contour[] => {
    if (entity.type === 'LWPOLYLINE') return [polyline(entity, scale)];
    if (entity.type !== 'CIRCLE') return [];
    const centre: Vec2 = [value(entity, 10) * scale, value(entity, 20) * scale];
    return [{ loop: circle(centre, value(entity, 40) * scale), closed: true }];
  });
  const pieces = entities.filter(({ type }) => type === 'LINE' || type === 'ARC');
  return [...whole, ...chains(pieces.map((entity) => loose(entity, scale)))];
};
