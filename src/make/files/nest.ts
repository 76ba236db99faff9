import type { Issue } from '../../core/issue.ts';
import { all, chain, fail, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import type { Making } from '../../document/schema.ts';
import type { CuttingPlan } from '../../drawing/cutting-plan.ts';
import {
  dxfName,
  sheetCutDxf,
  type CutDrawing,
  type CutSheet,
  type DxfOptions,
  type PackageFile,
} from '../../export/index.ts';
import type { Loop } from '../../geometry/loop.ts';
import { boundingBox } from '../../geometry/loop-measure.ts';
import { mapProfile, rotated, translated } from '../../geometry/loop-transform.ts';
import { pack, type Packed } from '../../geometry/pack.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import { kerfed } from '../../model/kerf.ts';
import type { PlatePart } from '../../model/part.ts';
import { text } from '../../text/index.ts';
import { utf8 } from './bytes.ts';

/** Where the files of whole sheets are. */
const FOLDER = 'sheets';

const cutSheet = ({ width, height, gap, margin }: Making['plates']['nest']): CutSheet => ({
  size: [width, height],
  gap,
  margin,
});

/** One piece to be laid: its contours as the beam follows them, kerf included. */
interface Piece {
  readonly part: PlatePart;
  readonly drawing: CutDrawing;
}

const thicknessOf = ({ layers: [layer] }: PlatePart): number =>
  layer === undefined ? 0 : layer.to - layer.from;

/** Name of what is cut from one kind of sheet: "mild-steel-6mm". */
const sheetName = (part: PlatePart): string =>
  `${part.material.toLowerCase().replace(/[^a-z0-9]+/g, '-')}-${plain(thicknessOf(part), 3)}mm`;

/** As many pieces as are wanted of a part. */
const piecesOf = (part: PlatePart, kerf: number): Result<Piece[]> => {
  const [layer] = part.layers;
  if (layer === undefined) return ok([]);
  const beam = kerf === 0 ? ok(layer.profile) : kerfed(layer.profile, kerf);
  return chain(beam, (cut) =>
    ok(
      Array.from({ length: part.quantity }, () => ({
        part,
        drawing: { cut, engrave: part.engraving },
      })),
    ),
  );
};

const sizeOf = ({ drawing }: Piece): Vec2 => {
  const { min, max } = boundingBox(drawing.cut.outer);
  return [max[0] - min[0], max[1] - min[1]];
};

/** Moves the piece, turned or not, so that the lower left corner of its box is at a point. */
const laid = ({ drawing: { cut, engrave } }: Piece, { at, turned }: Packed): CutDrawing => {
  const turn = (loop: Loop): Loop => (turned ? rotated(loop, 90) : loop);
  const { min } = boundingBox(turn(cut.outer));
  const shift: Vec2 = [at[0] - min[0], at[1] - min[1]];
  return {
    cut: mapProfile(cut, (loop) => translated(turn(loop), shift)),
    engrave: engrave.map((points) =>
      points.map(([x, y]): Vec2 => {
        const [u, v] = turned ? [-y, x] : [x, y];
        return [u + shift[0], v + shift[1]];
      }),
    ),
  };
};

const tooLarge = (piece: Piece, { size, margin }: CutSheet): Issue => ({
  code: 'nest-too-large',
  severity: 'error',
  path: 'making.plates.nest',
  ...text.make.nestTooLarge(piece.part.name, sizeOf(piece), size, margin),
});

const filesOf = (
  name: string,
  drawings: readonly CutDrawing[],
  sheet: CutSheet,
  options: DxfOptions,
  inches: boolean,
): Result<PackageFile[]> => {
  const marked = drawings.some(({ engrave }) => engrave.length > 0);
  const variants: DxfOptions[] = [
    options,
    { ...options, flavour: 'r12' },
    ...(marked ? [{ ...options, engrave: true }] : []),
    ...(inches ? [{ ...options, units: 'in' } as const] : []),
  ];
  return all(
    variants.map((variant) =>
      chain(sheetCutDxf(drawings, sheet, variant), (dxf) =>
        ok({ path: `${FOLDER}/${dxfName(name, variant)}`, kind: 'nested-sheet', bytes: utf8(dxf) }),
      ),
    ),
  );
};

/** A sheet of metal with what is cut from it. */
export interface NestedSheet {
  readonly name: string;
  readonly pieces: readonly { readonly part: PlatePart; readonly drawing: CutDrawing }[];
}

/** What a saw cuts is not laid out on sheets. */
const isBeamCut = ({ process }: PlatePart): boolean => process !== 'saw-drill';

/**
 * The pieces of beam-cut plates laid out on sheets, one series for each material and thickness:
 * every piece in the number that is wanted, apart by the gap and off the edge by the margin,
 * measured between the cuts. A part that fits on no sheet is an error that names it.
 */
export const nestedSheets = (
  plates: readonly PlatePart[],
  { plates: { kerf, nest } }: Making,
): Result<NestedSheet[]> => {
  const { gap, margin } = nest;
  const sheet = cutSheet(nest);
  const cut = plates.filter(isBeamCut);
  const names = [...new Set(cut.map(sheetName))].sort();
  const series = names.map((name): Result<NestedSheet[]> => {
    const alike = cut.filter((part) => sheetName(part) === name);
    return chain(all(alike.map((part) => piecesOf(part, kerf))), (lists) => {
      const pieces = lists.flat();
      const layout = pack(pieces.map(sizeOf), { sheet: sheet.size, gap, margin });
      const refused = new Set(layout.tooLarge.flatMap((i) => pieces[i]?.part ?? []));
      const issues = pieces
        .filter(({ part }, i) => refused.has(part) && pieces[i - 1]?.part !== part)
        .map((piece) => tooLarge(piece, sheet));
      if (issues.length > 0) return fail(...issues);
      const count = Math.max(...layout.packed.map((place) => place.sheet)) + 1;
      return ok(
        Array.from({ length: count }, (_, n) => ({
          name: `${name}-${String(n + 1)}`,
          pieces: layout.packed
            .filter((place) => place.sheet === n)
            .flatMap((place) => {
              const piece = pieces[place.index];
              return piece === undefined ? [] : [{ part: piece.part, drawing: laid(piece, place) }];
            }),
        })),
      );
    });
  });
  return chain(all(series), (sheets) => ok(sheets.flat()));
};

/** Cut files of whole sheets, in every flavour that is asked for. */
export const nestedFiles = (
  plates: readonly PlatePart[],
  making: Making,
  carry: string,
): Result<PackageFile[]> => {
  const { kerf, nest, inches } = making.plates;
  return chain(nestedSheets(plates, making), (sheets) => {
    const files = sheets.map(({ name, pieces }) =>
      filesOf(
        name,
        pieces.map(({ drawing }) => drawing),
        cutSheet(nest),
        { kerf, carry },
        inches === 'beside',
      ),
    );
    return chain(all(files), (found) => ok(found.flat()));
  });
};

/** The sheets of a design as they are drawn for whoever cuts and sorts them. */
export const plansOf = (
  plates: readonly PlatePart[],
  making: Making,
): Result<readonly CuttingPlan[]> =>
  chain(nestedSheets(plates, making), (sheets) =>
    ok(
      sheets.map(({ name, pieces }): CuttingPlan => {
        const [first] = pieces;
        const { kerf, nest } = making.plates;
        return {
          file: `${FOLDER}/${dxfName(name, { kerf })}`,
          size: [nest.width, nest.height],
          material: first
            ? text.drawing.partsList.sheet(first.part.material, plain(thicknessOf(first.part), 3))
            : '',
          pieces: pieces.map(({ part, drawing: { cut } }) => ({
            part: part.id,
            name: part.name,
            cut,
          })),
        };
      }),
    ),
  );
