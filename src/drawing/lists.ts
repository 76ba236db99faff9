import { TEXT } from './items.ts';
import { heading, paragraph, space, type Column, type Strip } from './layout.ts';

/** Numbered lists and others are set in by this much, letter heights. */
const INDENT = 2.4;
const DASH = 1.2;

export const steps = (
  lines: readonly string[],
  width: number,
  height: number = TEXT.small,
): Strip[] =>
  lines.map((line, i) =>
    paragraph(line, width, { mark: String(i + 1), indent: INDENT * height, height, tight: true }),
  );

export const bullets = (
  lines: readonly string[],
  width: number,
  height: number = TEXT.small,
): Strip[] =>
  lines.map((line) =>
    paragraph(line, width, { mark: '–', indent: DASH * height, height, tight: true }),
  );

/** Strips under a heading; nothing where there are none. */
export const section = (title: string, strips: readonly Strip[], width: number): Strip[] =>
  strips.length === 0 ? [] : [space(2), heading(title, width), ...strips];

/** Head of a column whose width comes from what is in it. */
export type Head = Omit<Column, 'width'>;

export const left = (title: string): Head => ({ title, align: 'left' });
export const right = (title: string): Head => ({ title, align: 'right' });
