import PDFDocument from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import { tan } from '../core/trigonometry.ts';
import { MM_PER_INCH, plain, radians } from '../core/units.ts';
import { onCircle } from '../geometry/arc.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Sheet } from '../drawing/sheet.ts';
import { STROKES } from '../drawing/strokes.ts';
import { fontSize, textWidth } from '../drawing/text-width.ts';
import { carried } from './carry.ts';
import { unnamed } from './unnamed.ts';
import { runsOf, singleLine, TONES, trace, traceLine, type Pen, type Run } from './runs.ts';

export interface PdfOptions {
  readonly title: string;
  /** DejaVu Sans and DejaVu Sans Bold as TrueType bytes; the used glyphs are embedded. */
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** The design as text, to be found again by `extractDesign`. */
  readonly carry?: string;
}

/** Points of a millimetre: 72 points an inch. */
const POINT = 72 / MM_PER_INCH;

/** Every document says it was made at this moment: the bytes depend on the design alone. */
const MOMENT = new Date(Date.UTC(2000, 0, 1));

/** Bezier pieces span at most this many degrees: 4e-6 of the radius off the circle. */
const PIECE = 45;

/** Switches off kerning and ligatures, so that text is as wide as `textWidth` says. */
const UNKERNED = { kern: false, liga: false, clig: false };

interface Glyph {
  readonly advanceWidth: number;
}

/** Glyphs of a text with where each stands, in thousandths of the size. */
interface Shaped {
  readonly glyphs: readonly Glyph[];
  readonly positions: readonly unknown[];
  readonly advanceWidth: number;
}

/** The part of the document that the types leave out: its font, which shapes text word by word. */
interface WithFont {
  readonly _font: {
    readonly font: { readonly glyphForCodePoint: (code: number) => Glyph };
    readonly scale: number;
    layoutRun: (text: string, features?: typeof UNKERNED) => Shaped;
    widthOfString: () => number;
  };
}

/**
 * Signs that stand for themselves whatever is beside them: Latin and Greek letters without marks of
 * their own, digits, punctuation, arrows, mathematical and other signs.
 */
const APART =
  /^[ -~\u00a0-\u00ac\u00ae-\u024f\u0370-\u03ff\u2010-\u2027\u2030-\u205e\u2070-\u20cf\u2100-\u27bf]*$/;

/** A text of such signs, one after the other. */
const setApart = ({ font, scale }: WithFont['_font'], text: string): Shaped => {
  const glyphs = [...text].map((sign) => font.glyphForCodePoint(sign.codePointAt(0) ?? 0));
  const positions = glyphs.map(({ advanceWidth }) => {
    const width = advanceWidth * scale;
    return { xAdvance: width, yAdvance: 0, xOffset: 0, yOffset: 0, advanceWidth: width };
  });
  return { glyphs, positions, advanceWidth: positions.reduce((sum, p) => sum + p.xAdvance, 0) };
};

/**
 * Chooses a font that shapes with those features by itself: the library keeps shaped words only
 * while it is given none with a text. Signs that stand for themselves are set one by one, which
 * spares reading the font's rules for shaping. The library also measures every text twice, for
 * underlines and for text that goes on after it; there is neither, and it took longer than writing.
 */
const setFont = (doc: PDFKit.PDFDocument, name: string, size: number): void => {
  const { _font: set } = doc.font(name, size) as unknown as WithFont;
  if (Object.hasOwn(set, 'layoutRun')) return;
  const shape = set.layoutRun.bind(set);
  set.layoutRun = (text) => (APART.test(text) ? setApart(set, text) : shape(text, UNKERNED));
  set.widthOfString = () => 0;
};

/** Operators are ASCII: names, numbers, and glyphs by their hexadecimal numbers. */
const ascii = new TextEncoder();

/**
 * Draws on a page and hands over what was drawn as one piece: the library would make bytes of
 * every operator by itself, which took longer than all the rest.
 */
const atOnce = (doc: PDFKit.PDFDocument, draw: () => void): void => {
  let operators = '';
  const write = doc.addContent.bind(doc);
  doc.addContent = (operator: string) => {
    operators += `${operator}\n`;
    return doc;
  };
  draw();
  doc.addContent = write;
  doc.addContent(ascii.encode(operators));
};

/** A page, and its height in mm. */
interface Page {
  readonly doc: PDFKit.PDFDocument;
  readonly height: number;
}

/** A point of a page, points from the top left corner. */
const down = ([x, y]: Vec2, { height }: Page): readonly [number, number] => [
  x * POINT,
  (height - y) * POINT,
];

const tangentAt = (centre: Vec2, radius: number, angle: number, length: number): Vec2 => {
  const [x, y] = onCircle(centre, radius, angle);
  const [dx, dy] = onCircle([0, 0], length, angle + 90);
  return [x + dx, y + dy];
};

const PEN: Pen<Page> = {
  move: (page, to) => page.doc.moveTo(...down(to, page)),
  line: (page, to) => page.doc.lineTo(...down(to, page)),
  arc: (page, centre, radius, from, sweep) => {
    const count = Math.ceil(sweep / PIECE);
    const step = sweep / count;
    const reach = radius * (4 / 3) * tan(radians(step) / 4);
    for (let i = 0; i < count; i += 1) {
      const [start, end] = [from + i * step, from + (i + 1) * step];
      page.doc.bezierCurveTo(
        ...down(tangentAt(centre, radius, start, reach), page),
        ...down(tangentAt(centre, radius, end, -reach), page),
        ...down(onCircle(centre, radius, end), page),
      );
    }
  },
};

const SHIFT = { left: 0, centre: -0.5, right: -1 } as const;

const drawRun = (page: Page, run: Run): void => {
  const { doc } = page;
  if (run.kind === 'strokes') {
    const { width, dashes } = STROKES[run.stroke];
    doc
      .save()
      .lineWidth(width * POINT)
      .lineJoin('round')
      .strokeColor(TONES.ink);
    if (dashes.length === 0) doc.lineCap('round');
    // The types know one dash length only; this is the operator for a pattern (ISO 32000, 8.4.3.6).
    else doc.addContent(`[${dashes.map((dash) => plain(dash * POINT)).join(' ')}] 0 d`);
    for (const item of run.items) trace(item, PEN, page);
    doc.stroke().restore();
    return;
  }
  if (run.kind === 'fill') {
    traceLine(run.points, PEN, page);
    doc.closePath().fill(TONES[run.tone]);
    return;
  }
  if (run.kind === 'blocks') {
    for (const { x0, y0, x1, y1 } of run.boxes)
      doc.rect(...down([x0, y1], page), (x1 - x0) * POINT, (y1 - y0) * POINT);
    doc.fill(TONES.ink);
    return;
  }
  const text = singleLine(run.text);
  if (text === '') return;
  const [x, y] = down(run.at, page);
  const shift = SHIFT[run.align] * textWidth(text, run.height, run.bold) * POINT;
  doc.save().rotate(-run.angle, { origin: [x, y] });
  setFont(doc, run.bold ? 'bold' : 'regular', fontSize(run.height) * POINT);
  doc
    .fillColor(TONES.ink)
    .text(text, x + shift, y, { lineBreak: false, baseline: 'alphabetic' })
    .restore();
};

/** The part of the document that the types leave out: entries of its catalogue. */
interface WithCatalogue {
  readonly _root: { readonly data: { ViewerPreferences?: { data: Record<string, unknown> } } };
}

/**
 * Sheets as one PDF, a page and a bookmark each: exact page size, full scale when printed as
 * the viewer is asked to, fonts embedded. Nothing is compressed, because the engines of the
 * command line and of the page would compress to different bytes.
 */
export const pdf = async (
  sheets: readonly Sheet[],
  { title, fonts, carry }: PdfOptions,
): Promise<Uint8Array> => {
  const doc = new PDFDocument({
    autoFirstPage: false,
    // No standard font: the page's build of the library has none, and every text sets its own.
    font: '',
    compress: false,
    displayTitle: true,
    margin: 0,
    pdfVersion: '1.7',
    lang: 'en',
    // The library copies the title into XML without escaping it.
    info: {
      Title: singleLine(title).replace(/[<>&]/g, ' '),
      Creator: 'Platenwright',
      Producer: 'Platenwright',
      CreationDate: MOMENT,
      ...(carry === undefined ? {} : { Design: carried(carry) }),
    },
  });
  const bytes = toBytes(doc);
  const { ViewerPreferences } = (doc as unknown as WithCatalogue)._root.data;
  if (ViewerPreferences) ViewerPreferences.data.PrintScaling = 'None';
  doc.registerFont('regular', unnamed(fonts.regular)).registerFont('bold', unnamed(fonts.bold));
  for (const sheet of sheets) {
    doc.addPage({ size: sheet.size.map((side) => side * POINT), margin: 0 });
    doc.outline.addItem(singleLine(sheet.title));
    atOnce(doc, () => {
      const page = { doc, height: sheet.size[1] };
      for (const run of runsOf(sheet.items)) drawRun(page, run);
    });
  }
  doc.end();
  return bytes;
};
