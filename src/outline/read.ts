import { problem, type Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { text } from '../text/index.ts';
import { cleaned, type Contour } from './clean.ts';
import { LARGEST_OUTLINE, MOST_SPANS, TooMuch, type Drawn } from './drawn.ts';
import { flattenDrawn } from './flatten.ts';
import { lengthAlong } from './lay.ts';

/** A contour that is offered, and how long it is along the blade, units of the file. */
export interface Offered extends Contour {
  readonly along: number;
}

/** The contours of a file, the likeliest outline first, before their scale is confirmed. */
export interface OutlineFile {
  readonly contours: readonly Offered[];
  /** Millimetres of one unit of the file as it says itself; null where it does not. */
  readonly unit: number | null;
  /** Most by which curves were straightened, units of the file. */
  readonly chord: number;
}

/** Most contours that are offered. */
const MOST_OFFERED = 12;

const words = text.outline;

const looksLikeSvg = (content: string): boolean => /<svg[\s>:]/i.test(content.slice(0, 20_000));
const looksLikeDxf = (content: string): boolean =>
  /^\s*(?:999\r?\n.*\r?\n\s*)*0\s*\r?\n\s*SECTION/i.test(content);

/** The readers are fetched only when there is something to read. */
const drawnIn = async (content: string): Promise<Drawn | undefined> => {
  if (looksLikeSvg(content)) return (await import('./read-svg.ts')).readSvg(content);
  if (looksLikeDxf(content)) return (await import('./read-dxf.ts')).readDxf(content);
  return undefined;
};

const refused = (code: string, said: { readonly message: string; readonly fix: string }) =>
  fail(problem(code, '', said));

/** What was mended or left out, as warnings; places in units of the file. */
const reportOf = (drawn: Drawn, found: ReturnType<typeof cleaned>): Issue[] => {
  const warning = (code: string, said: { readonly message: string; readonly fix: string }) =>
    problem(code, '', said, 'warning');
  const open = found.contours.filter(({ gap }) => gap > 0);
  return [
    ...(found.duplicates > 0 ? [warning('doubled-lines', words.doubled(found.duplicates))] : []),
    ...(found.specks > 0 ? [warning('lines-without-length', words.specks(found.specks))] : []),
    ...found.bridged
      .slice(0, 5)
      .map(({ at, size }) => warning('gap-bridged', words.bridged(size, at[0], at[1]))),
    ...open.slice(0, 3).map(({ gap, points }) => {
      const [x, y] = points.at(-1) ?? [0, 0];
      return warning('open-contour', words.open(gap, x, y));
    }),
    ...[...drawn.ignored]
      .slice(0, 8)
      .map(([name, n]) => warning('left-out', words.leftOut(name.slice(0, 40), n))),
  ];
};

/**
 * Reads a blade outline from the bytes of a DXF or SVG file; the content decides which it is.
 * Sizes, counts and depth are limited. Doubled lines, gaps and open contours are named.
 */
export const readOutline = async (bytes: Uint8Array): Promise<Result<OutlineFile>> => {
  if (bytes.length > LARGEST_OUTLINE)
    return refused('too-large', words.tooLarge(bytes.length, LARGEST_OUTLINE));
  try {
    const drawn = await drawnIn(new TextDecoder().decode(bytes));
    if (drawn === undefined) return refused('not-an-outline', words.neither);
    const flattened = flattenDrawn(drawn);
    const found = cleaned(flattened);
    if (found.tooManyEnds) return refused('too-many-ends', words.tooManyEnds);
    const report = reportOf(drawn, found);
    if (found.contours.length === 0) {
      const none = problem('no-contour', '', words.noContour);
      return fail(none, ...report);
    }
    return ok(
      {
        contours: found.contours
          .slice(0, MOST_OFFERED)
          .map((contour) => ({ ...contour, along: lengthAlong(contour.points) })),
        unit: drawn.unit,
        chord: flattened.chord,
      },
      report,
    );
  } catch (error) {
    // The readers throw at what they do not understand: damaged input, not a defect of ours.
    if (error instanceof TooMuch) return refused('too-much', words.tooMuch(MOST_SPANS));
    return refused('damaged-file', words.damaged);
  }
};
