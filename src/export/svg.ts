import { plain } from '../core/units.ts';
import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Box } from '../drawing/box.ts';
import type { Sheet } from '../drawing/sheet.ts';
import { STROKES } from '../drawing/strokes.ts';
import { fontSize, textWidth } from '../drawing/text-width.ts';
import { carried } from './carry.ts';
import { runsOf, singleLine, TONES, trace, type Pen, type Run } from './runs.ts';
import { xmlText } from './xml.ts';

export interface SvgOptions {
  /** The design as text, to be found again by `extractDesign`. */
  readonly carry?: string;
}

const mm = (value: number): string => plain(value, 4);

/** A point of a sheet so high: the format's y runs downwards. */
const down = ([x, y]: Vec2, height: number): string => `${mm(x)} ${mm(height - y)}`;

/** Path data so far, on a sheet so high. */
interface Path {
  readonly height: number;
  data: string;
}

const halfTurn = (path: Path, centre: Vec2, radius: number, to: number): void => {
  const end = down(onCircle(centre, radius, to), path.height);
  path.data += `A${mm(radius)} ${mm(radius)} 0 0 0 ${end}`;
};

const PATH: Pen<Path> = {
  move: (path, to) => {
    path.data += `M${down(to, path.height)}`;
  },
  line: (path, to) => {
    path.data += `L${down(to, path.height)}`;
  },
  // A full turn has no end point to aim at, so every arc is drawn in two halves.
  arc: (path, centre, radius, from, sweep) => {
    halfTurn(path, centre, radius, from + sweep / 2);
    halfTurn(path, centre, radius, from + sweep);
  },
};

const pathData = ({ items }: Extract<Run, { kind: 'strokes' }>, height: number): string => {
  const path: Path = { height, data: '' };
  for (const item of items) trace(item, PATH, path);
  return path.data;
};

const pointsData = (points: readonly Vec2[], height: number): string => {
  const data: string[] = [];
  for (const p of points) data.push(down(p, height));
  return data.join(' ');
};

const boxData = ({ x0, y0, x1, y1 }: Box, height: number): string =>
  `M${down([x0, y1], height)}h${mm(x1 - x0)}v${mm(y1 - y0)}h${mm(x0 - x1)}z`;

const ANCHOR = { left: 'start', centre: 'middle', right: 'end' } as const;

const runXml = (run: Run, height: number): string => {
  if (run.kind === 'strokes') {
    const { width, dashes } = STROKES[run.stroke];
    const dash =
      dashes.length === 0
        ? ' stroke-linecap="round"'
        : ` stroke-dasharray="${dashes.map(mm).join(' ')}"`;
    return `<path class="${run.stroke}" fill="none" stroke="#000000" stroke-width="${mm(width)}"${dash} stroke-linejoin="round" d="${pathData(run, height)}"/>`;
  }
  if (run.kind === 'fill')
    return `<polygon fill="${TONES[run.tone]}" points="${pointsData(run.points, height)}"/>`;
  if (run.kind === 'blocks')
    return `<path class="code" fill="${TONES.ink}" d="${run.boxes.map((box) => boxData(box, height)).join('')}"/>`;
  const text = singleLine(run.text);
  if (text === '') return '';
  const [x, y] = down(run.at, height).split(' ');
  const turn = run.angle === 0 ? '' : ` transform="rotate(${mm(-run.angle)} ${x} ${y})"`;
  const weight = run.bold ? ' font-weight="bold"' : '';
  // The width is pinned, so that another typeface takes the same room.
  return `<text x="${x}" y="${y}" font-size="${mm(fontSize(run.height))}"${weight} text-anchor="${ANCHOR[run.align]}" textLength="${mm(textWidth(text, run.height, run.bold))}" lengthAdjust="spacingAndGlyphs"${turn}>${xmlText(text)}</text>`;
};

/**
 * A sheet as SVG: its trimmed size in mm, one user unit a millimetre, lines of ISO 128 widths,
 * text as text. The same sheet gives the same characters.
 */
export const svg = (sheet: Sheet, { carry }: SvgOptions = {}): string => {
  const [width, height] = sheet.size.map(mm);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${xmlText(sheet.title)}</title>`,
    ...(carry === undefined ? [] : [`<metadata>${carried(carry)}</metadata>`]),
    `<rect width="${width}" height="${height}" fill="#ffffff"/>`,
    `<g font-family="'DejaVu Sans', sans-serif" style="font-kerning:none;white-space:pre" fill="#000000">`,
    ...runsOf(sheet.items).map((run) => runXml(run, sheet.size[1])),
    '</g>',
    '</svg>\n',
  ].join('\n');
};
