import { problem } from '../../core/issue.ts';
import { all, chain, fail, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { saveDesign } from '../../document/save.ts';
import { LARGEST_OUTLINE } from '../../outline/drawn.ts';
import { readOutline } from '../../outline/read.ts';
import { withOutline } from '../../outline/take.ts';
import { traceOutline, type Offer, type Traced } from '../../outline/trace.ts';
import { text } from '../../text/index.ts';
import type { Blade } from '../../blade/schema.ts';
import type { Design } from '../../document/schema.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign, readBytes } from '../load.ts';
import { writeNew } from '../write-file.ts';

export interface OutlineOptions {
  readonly length: string;
  readonly plunge?: string;
  readonly turn?: string;
  readonly otherEnd?: boolean;
  readonly otherEdge?: boolean;
  readonly points?: boolean;
  readonly into?: string;
  readonly out?: string;
  readonly json?: boolean;
}

const words = text.outline.command;

/** Dimensions are taken where they leave the drawn line by no more than this, mm. */
const NEAR = 0.1;

const within =
  (unit: 'mm' | 'degrees', min: number, max: number) =>
  (flag: string, value: string): Result<number> => {
    const n = /^-?\d+(?:\.\d+)?$/.test(value) ? Number(value) : NaN;
    return n >= min && n <= max
      ? ok(n)
      : fail(problem('bad-number', flag, words.badNumber(flag, value, unit, min, max)));
  };
const millimetres = within('mm', 5, 1000);
const angle = within('degrees', -45, 45);

/** Stands in where no design was named: an outline is the same on every blade. */
const BARE: Blade = {
  name: '-',
  quantity: 1,
  outline: { kind: 'curves', spine: [], edge: [] },
  ricasso: 0,
  tang: { kind: 'tang', length: 110, height: 20, thickness: 3, drop: 4 },
  thickness: [{ u: 0, t: 3 }],
  spineRadius: 0,
  edge: { asHeatTreated: 0.7, wanted: 0.2, shareLeft: 0.5 },
  bevels: { left: { kind: 'full' }, right: { kind: 'full' } },
  line: { follow: 'share', allowed: 1 },
};

interface Found {
  readonly design: Design | undefined;
  readonly traced: Traced;
  readonly offer: Offer;
}

const find = async (file: string, options: OutlineOptions): Promise<Result<Found>> => {
  const { into, out, otherEnd = false, otherEdge = false } = options;
  if (into !== undefined && out === undefined)
    return fail(problem('no-output', '--out', words.needsOut));
  const given = (read: typeof angle, flag: string, value: string | undefined) =>
    value === undefined ? ok(null) : read(flag, value);
  const numbers = all([
    millimetres('--length', options.length),
    given(millimetres, '--plunge', options.plunge),
    given(angle, '--turn', options.turn),
  ]);
  if (!numbers.ok) return numbers;
  const [length, plunge = null, turn = null] = numbers.value;
  const design = into === undefined ? undefined : loadDesign(into);
  if (design && !design.ok) return design;
  const [first] = design?.value.blades ?? [];
  const bytes = readBytes(file, LARGEST_OUTLINE);
  if (!bytes.ok) return bytes;
  const read = await readOutline(bytes.value);
  return chain(read, ({ contours: [contour] }) =>
    contour === undefined
      ? fail(problem('no-contour', '', text.outline.noContour))
      : chain(
          traceOutline(first ?? BARE, contour, {
            length: length ?? 0,
            plunge,
            turn,
            otherEnd,
            otherEdge,
          }),
          (traced) => {
            const { byDimensions, byPoints } = traced;
            const near = byDimensions !== null && byDimensions.deviation <= NEAR;
            const offer = near && options.points !== true ? byDimensions : byPoints;
            return ok({ design: design?.value, traced, offer });
          },
        ),
  );
};

const print = ({ traced }: Found): void => {
  const { byDimensions, byPoints, tang } = traced;
  printLine(words.found(plain(traced.length, 2), plain(traced.scale, 6)));
  printLine(text.outline.plungeBy[traced.plungeBy]);
  printLine(words.turned(plain(traced.turn, 2), text.outline.turnBy[traced.turnBy]));
  printLine(byDimensions ? words.dimensions(plain(byDimensions.deviation, 3)) : words.noDimensions);
  if (byPoints.outline.kind === 'curves') {
    const n = byPoints.outline.spine.length + byPoints.outline.edge.length;
    printLine(words.points_(n, plain(byPoints.deviation, 3)));
  }
  if (tang)
    printLine(words.tang(plain(tang.length, 2), plain(tang.height, 2), plain(tang.drop, 2)));
};

/**
 * Reads an outline, prints how far each way to hold it leaves the drawn line, and with `into` and
 * `out` writes a new design whose first blade has it. Ends with 0 or 2.
 */
export const outlineFile = async (file: string, options: OutlineOptions): Promise<ExitCode> => {
  const { out, json = false } = options;
  const found = chain(await find(file, options), (answer) => {
    const { design, traced, offer } = answer;
    const [first, ...others] = design?.blades ?? [];
    if (design === undefined || first === undefined || out === undefined) return ok(answer);
    const blades = [withOutline(first, offer.outline, traced), ...others];
    const issue = writeNew(out, saveDesign({ ...design, blades }));
    return issue ? fail(issue) : ok(answer);
  });
  if (!found.ok) {
    printIssues(found.issues, json);
    return 2;
  }
  const { traced, offer } = found.value;
  if (json)
    printJson({
      format: 'platenwright-outline',
      length: traced.length,
      scale: traced.scale,
      plungeBy: traced.plungeBy,
      turn: traced.turn,
      turnBy: traced.turnBy,
      byDimensions: traced.byDimensions,
      byPoints: traced.byPoints,
      tang: traced.tang,
      taken: offer,
      issues: found.issues,
    });
  else {
    printIssues(found.issues, false);
    print(found.value);
    if (out !== undefined && found.value.design) printLine(words.written(out));
  }
  return 0;
};
