import { hasError } from '../../core/issue.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { MM_PER_INCH, plain } from '../../core/units.ts';
import { boundingBox, unionBox } from '../../geometry/loop-measure.ts';
import { normalised } from '../../geometry/loop-transform.ts';
import type { Loop, Profile } from '../../geometry/loop.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { kerfed } from '../../model/kerf.ts';
import type { PlatePart } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import { lintDxf } from '../lint/dxf.ts';
import { comments } from './comments.ts';
import { CUT_LAYERS, type CutEntity } from './entity.ts';
import { writeR12 } from './r12.ts';
import { writeR2000 } from './r2000.ts';

export interface DxfOptions {
  /** `r2000` (AC1015, closed polylines with bulges) unless a reader needs `r12`. */
  readonly flavour?: 'r2000' | 'r12';
  readonly units?: 'mm' | 'in';
  /** Marks the engraving on a layer of its own; a cut file holds CUT alone unless asked. */
  readonly engrave?: boolean;
  /** Width of the beam, mm: outer sizes grow and holes shrink by it. Nominal at 0 or where absent. */
  readonly kerf?: number;
  /** The design as text, to be found again by `extractDesign`. */
  readonly carry?: string;
}

/** What is cut and marked, mm. */
export interface CutDrawing {
  readonly cut: Profile;
  readonly engrave: readonly (readonly Vec2[])[];
}

/** A sheet that is left between and around the parts cut from it, mm; its corner is the origin. */
export interface CutSheet {
  readonly size: Vec2;
  readonly gap: number;
  readonly margin: number;
}

/**
 * Entities in file units. The numbers are rounded before anything is derived from them, so that
 * neighbouring entities share their end points exactly.
 */
const entities = (
  drawings: readonly CutDrawing[],
  { units = 'mm', engrave = false }: DxfOptions,
): CutEntity[] => {
  const value = (mm: number): number =>
    Number(units === 'mm' ? plain(mm) : plain(Number(plain(mm)) / MM_PER_INCH, 9));
  const point = ([x, y]: Vec2): Vec2 => [value(x), value(y)];
  const contour = (loop: Loop, layer: string): CutEntity =>
    loop.kind === 'circle'
      ? { kind: 'circle', layer, centre: point(loop.centre), radius: value(loop.radius) }
      : {
          kind: 'contour',
          layer,
          vertices: loop.vertices.map(({ x, y, bulge }) => ({
            x: value(x),
            y: value(y),
            bulge: Number(plain(bulge, 9)),
          })),
        };
  const loops = drawings.flatMap(({ cut }) => {
    const { outer, holes } = normalised(cut);
    return [outer, ...holes];
  });
  const strokes = engrave ? drawings.flatMap((drawing) => drawing.engrave) : [];
  const marks = strokes.flatMap((points) =>
    points.slice(1).map((b, i): CutEntity => {
      return { kind: 'line', layer: 'ENGRAVE', a: point(points[i] ?? b), b: point(b) };
    }),
  );
  return [...loops.map((loop) => contour(loop, 'CUT')), ...marks];
};

/** Contours that the beam follows, written, read back and linted. */
const written = (
  beams: readonly CutDrawing[],
  options: DxfOptions,
  says: string,
  sheet?: CutSheet,
): Result<string> => {
  const { flavour = 'r2000', units = 'mm', engrave = false } = options;
  const content = entities(beams, options);
  const notes = comments(says, options.carry);
  const dxf =
    flavour === 'r12'
      ? writeR12(content, CUT_LAYERS, notes)
      : writeR2000(content, CUT_LAYERS, units, notes);
  const issues = lintDxf(dxf, {
    flavour,
    units,
    layers: engrave ? ['CUT', 'ENGRAVE'] : ['CUT'],
    box: unionBox(beams.map(({ cut }) => boundingBox(cut.outer))),
    parts: beams.length,
    ...(sheet === undefined ? {} : { sheet }),
  });
  return hasError(issues) ? fail(...issues) : ok(dxf, issues);
};

const unitOf = ({ units = 'mm' }: DxfOptions): string => (units === 'mm' ? 'mm' : 'inch');

/**
 * A cut file, read back and linted before it is handed out: an error of the lint is an error
 * here, and no file.
 */
export const cutDxf = (drawing: CutDrawing, options: DxfOptions = {}): Result<string> => {
  const { kerf = 0 } = options;
  const beam = kerf === 0 ? ok(drawing.cut) : kerfed(drawing.cut, kerf);
  return chain(beam, (cut) =>
    written([{ ...drawing, cut }], options, text.exporting.dxfComment(unitOf(options), kerf)),
  );
};

/**
 * The cut file of a sheet with several parts on it, whose contours have the kerf in them already.
 * The lint also holds every distance between parts against the gap, and to the edge of the sheet
 * against the margin.
 */
export const sheetCutDxf = (
  beams: readonly CutDrawing[],
  sheet: CutSheet,
  options: DxfOptions,
): Result<string> => {
  const { size, gap, margin } = sheet;
  const says = text.exporting.dxfComment(unitOf(options), options.kerf ?? 0);
  return written(beams, options, `${says} ${text.exporting.sheetOf(size, gap, margin)}`, sheet);
};

/** The cut file of one plate, its engraving only on request; issues have the part as their path. */
export const plateDxf = (part: PlatePart, options: DxfOptions = {}): Result<string> => {
  const [layer] = part.layers;
  if (layer === undefined) throw new Error(`plate ${part.id} has no layer`);
  const result = cutDxf({ cut: layer.profile, engrave: part.engraving }, options);
  return { ...result, issues: result.issues.map((issue) => ({ ...issue, path: part.id })) };
};

/** File name that says the unit, and the flavour, the marks and the kerf where they are special. */
export const dxfName = (id: string, options: DxfOptions = {}): string => {
  const { flavour = 'r2000', units = 'mm', engrave = false, kerf = 0 } = options;
  return [
    id,
    ...(flavour === 'r12' ? ['r12'] : []),
    ...(engrave ? ['engrave'] : []),
    ...(kerf === 0 ? [] : [`kerf${plain(kerf, 3)}`]),
    `${units}.dxf`,
  ].join('_');
};
