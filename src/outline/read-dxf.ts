import DxfParser, {
  type IArcEntity,
  type IBlock,
  type ICircleEntity,
  type IDxf,
  type IEllipseEntity,
  type IEntity,
  type IInsertEntity,
  type ILineEntity,
  type ILwpolylineEntity,
  type IPolylineEntity,
} from 'dxf-parser';
import { arcOf, onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { after, IDENTITY, mapped, moved, stretched, turned, type Affine } from './affine.ts';
import {
  DEEPEST,
  ellipseSpan,
  lineSpan,
  MOST_SPANS,
  TooMuch,
  type Drawn,
  type DrawnPath,
  type Span,
} from './drawn.ts';
import { readablePairs } from './dxf-pairs.ts';
import { SplineHandler, type SplineEntity } from './dxf-spline.ts';
import { splineSpans } from './spline.ts';

/** Millimetres of $INSUNITS (published DXF reference): inch, foot, mm, cm, m. */
const UNITS: Readonly<Record<number, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000 };

interface Corner {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

const bulged = (a: Vec2, b: Vec2, bulge: number): Span => {
  if (Math.abs(bulge) < 1e-12 || (a[0] === b[0] && a[1] === b[1])) return lineSpan(a, b);
  const { centre, radius, start, sweep } = arcOf(a, b, bulge);
  return { at: (t) => onCircle(centre, radius, start + sweep * t), straight: false };
};

const polyline = (corners: readonly Corner[], closed: boolean): DrawnPath => ({
  closed,
  spans: corners.flatMap((corner, i) => {
    const next = corners[i + 1] ?? (closed ? corners[0] : undefined);
    return next === undefined
      ? []
      : [bulged([corner.x, corner.y], [next.x, next.y], corner.bulge ?? 0)];
  }),
});

/** From `start` anticlockwise to `end`, radians; a whole turn where they are equal. */
const turnTo = (start: number, end: number): number => {
  const sweep = (end - start) % (2 * Math.PI);
  return start + (sweep <= 1e-12 ? sweep + 2 * Math.PI : sweep);
};

const arcs = (c: Vec2, p: Vec2, q: Vec2, from: number, to: number): DrawnPath => {
  const n = 4;
  const at = (i: number): number => from + ((to - from) * i) / n;
  return {
    closed: to - from > 2 * Math.PI - 1e-9,
    spans: [0, 1, 2, 3].map((i) => ellipseSpan(c, p, q, at(i), at(i + 1))),
  };
};

/** What an entity draws; undefined for one that is not an outline or not understood. */
const shapeOf = (entity: IEntity): DrawnPath | undefined => {
  switch (entity.type) {
    case 'LINE': {
      const [a, b] = (entity as ILineEntity).vertices;
      return a && b && { spans: [lineSpan([a.x, a.y], [b.x, b.y])], closed: false };
    }
    case 'LWPOLYLINE': {
      const { vertices, shape } = entity as ILwpolylineEntity;
      return polyline(vertices, shape);
    }
    case 'POLYLINE': {
      const { vertices, shape, is3dPolygonMesh, isPolyfaceMesh } = entity as IPolylineEntity;
      // The frame of a fitted curve is drawn by the vertices put between its corners.
      const drawn = vertices.filter(({ splineControlPoint }) => !splineControlPoint);
      return is3dPolygonMesh || isPolyfaceMesh ? undefined : polyline(drawn, shape);
    }
    case 'CIRCLE': {
      const { center: c, radius: r } = entity as ICircleEntity;
      return arcs([c.x, c.y], [r, 0], [0, r], 0, 2 * Math.PI);
    }
    case 'ARC': {
      const { center: c, radius: r, startAngle, endAngle } = entity as IArcEntity;
      return arcs([c.x, c.y], [r, 0], [0, r], startAngle, turnTo(startAngle, endAngle));
    }
    case 'ELLIPSE': {
      const e = entity as IEllipseEntity;
      const [px, py] = [e.majorAxisEndPoint.x, e.majorAxisEndPoint.y];
      const q: Vec2 = [-py * e.axisRatio, px * e.axisRatio];
      return arcs(
        [e.center.x, e.center.y],
        [px, py],
        q,
        e.startAngle,
        turnTo(e.startAngle, e.endAngle),
      );
    }
    case 'SPLINE':
      return splineSpans((entity as SplineEntity & IEntity).spline);
    default:
      return undefined;
  }
};

/** The direction of extrusion as the library keeps it, for one entity so and for another so. */
interface Extruded extends IEntity {
  readonly extrusionDirectionZ?: unknown;
  readonly extrusionDirection?: { readonly z?: unknown };
}

/** The mirror of entities drawn on the far side of the plane: extrusion direction 0, 0, -1. */
const sideOf = (entity: IEntity): Affine => {
  const told = entity as Extruded;
  // A line is told in the coordinates of the drawing, whichever way it faces.
  const z = told.extrusionDirectionZ ?? told.extrusionDirection?.z;
  return entity.type !== 'LINE' && typeof z === 'number' && z < 0 ? stretched(-1, 1) : IDENTITY;
};

/** What the library reads, and what belongs to it. */
const KNOWN = new Set(
  'LINE LWPOLYLINE POLYLINE VERTEX SEQEND ARC CIRCLE ELLIPSE SPLINE INSERT ATTRIB ATTDEF POINT SOLID 3DFACE TEXT MTEXT DIMENSION'.split(
    ' ',
  ),
);

/** Entities that the library leaves out without a word, by name. */
const unknownIn = (content: string): Map<string, number> => {
  const found = new Map<string, number>();
  const [, section = ''] = content.split(/^\s*2\s*\r?\n\s*ENTITIES\s*$/m);
  const [entities = ''] = section.split(/^\s*ENDSEC\s*$/m);
  for (const [, name = ''] of entities.matchAll(/^\s*0\s*\r?\n\s*([A-Z][A-Z0-9_]+)\s*$/gm))
    if (!KNOWN.has(name)) found.set(name, (found.get(name) ?? 0) + 1);
  return found;
};

const placed = ({ position, rotation, xScale, yScale }: IInsertEntity, block: IBlock): Affine =>
  after(
    moved(position.x, position.y),
    after(
      turned(rotation ?? 0),
      after(
        stretched(xScale ?? 1, yScale ?? 1),
        moved(-(block.position?.x ?? 0), -(block.position?.y ?? 0)),
      ),
    ),
  );

/** The curves of a DXF file's model space, blocks inserted. */
export const readDxf = (content: string): Drawn => {
  // Sections may be missing, whatever the reader's types say.
  const parser = new DxfParser();
  parser.registerEntityHandler(SplineHandler as never);
  const file: Partial<IDxf> = parser.parseSync(readablePairs(content)) ?? {};
  const paths: DrawnPath[] = [];
  const ignored = unknownIn(content);
  let spans = 0;
  const walk = (entities: readonly IEntity[], outer: Affine, depth: number): void => {
    if (depth > DEEPEST) throw new TooMuch();
    for (const entity of entities) {
      if (entity.inPaperSpace || entity.visible === false) continue;
      if ((spans += 1) > MOST_SPANS) throw new TooMuch();
      const affine = after(outer, sideOf(entity));
      const insert = entity.type === 'INSERT' ? (entity as IInsertEntity) : undefined;
      const block = insert && file.blocks?.[insert.name];
      if (insert && block) {
        walk(block.entities ?? [], after(affine, placed(insert, block)), depth + 1);
        continue;
      }
      const shape = shapeOf(entity);
      if (shape === undefined) ignored.set(entity.type, (ignored.get(entity.type) ?? 0) + 1);
      else paths.push(mapped(affine, shape));
      if ((spans += shape?.spans.length ?? 0) > MOST_SPANS) throw new TooMuch();
    }
  };
  walk(file.entities ?? [], IDENTITY, 0);
  const unit: unknown = file.header?.['$INSUNITS'];
  return { paths, ignored, unit: (typeof unit === 'number' ? UNITS[unit] : undefined) ?? null };
};
