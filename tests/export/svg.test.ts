import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { extractDesign } from '../../src/export/extract.ts';
import { svg } from '../../src/export/svg.ts';
import { hostile } from './samples.ts';
import { sheet, symbols } from './sheets.ts';

const drawing = svg(sheet, { carry: hostile });

interface Svg {
  readonly svg: {
    readonly width: string;
    readonly height: string;
    readonly viewBox: string;
    readonly title: string;
    readonly g: {
      readonly path: readonly Record<string, string>[];
      readonly text: readonly (Record<string, string> & { '#text': string })[];
    };
  };
}
const parsed = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '',
  trimValues: false,
  parseTagValue: false,
  parseAttributeValue: false,
}).parse(drawing) as Svg;

describe('SVG', () => {
  it('is well formed, in millimetres, one user unit a millimetre', () => {
    expect(XMLValidator.validate(drawing)).toBe(true);
    expect(parsed.svg).toMatchObject({
      width: '210mm',
      height: '297mm',
      viewBox: '0 0 210 297',
      title: 'Sample sheet',
    });
  });

  it('draws ISO 128 widths and dashes, y downwards, lengths one to one', () => {
    const style = (name: string): string[] => {
      const path = parsed.svg.g.path.find((p) => p.class === name);
      return [path?.['stroke-width'] ?? '', path?.['stroke-dasharray'] ?? ''];
    };
    expect(style('visible')).toEqual(['0.5', '']);
    expect(style('dimension')).toEqual(['0.25', '']);
    // ISO 128-2: dash 12 d and gap 3 d; long dash 24 d, gap 3 d, dot 0.5 d, at d = 0.25.
    expect(style('hidden')).toEqual(['0.25', '3 0.75']);
    expect(style('centre')).toEqual(['0.25', '6 0.75 0.125 0.75']);
    expect(style('phantom')).toEqual(['0.25', '6 0.75 0.125 0.75 0.125 0.75']);
    expect(parsed.svg.g.path.find((p) => p.class === 'visible')?.d).toBe('M30 267L130 267');
  });

  it('closes circles and runs arcs anticlockwise', () => {
    const [circle, arc] = parsed.svg.g.path
      .map((p) => p.d ?? '')
      .filter((d) => d.includes('A20 20'));
    expect(circle).toBe('M80 197A20 20 0 0 0 40 197A20 20 0 0 0 80 197');
    // From 30 to 300 degrees about (150, 100): ends at (160, 82.679), 297 - 82.679 from the top.
    expect(arc).toMatch(/^M167\.3205 187A.* 160 214\.3205$/);
  });

  it('keeps text as escaped text of a pinned width', () => {
    expect(drawing).not.toContain('<script>');
    const texts = parsed.svg.g.text;
    expect(texts[0]?.['#text']).toBe(symbols);
    expect(Number(texts[0]?.textLength)).toBeGreaterThan(100);
    expect(texts.map((t) => t['text-anchor']).slice(0, 3)).toEqual(['start', 'middle', 'end']);
    expect(texts[3]?.transform).toBe('rotate(-90 190 97)');
  });

  it('carries the design and is the same twice', () => {
    expect(extractDesign(new TextEncoder().encode(drawing))).toMatchObject({
      ok: true,
      value: hostile,
    });
    expect(svg(sheet, { carry: hostile })).toBe(drawing);
  });
});
