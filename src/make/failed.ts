import type { CheckResult } from '../check/result.ts';
import type { Item, Sheet } from '../drawing/sheet.ts';
import { textWidth } from '../drawing/text-width.ts';
import { text } from '../text/index.ts';

const HEIGHT = 3.5;
/** First line and spacing in the filing margin left of the frame, mm. */
const FIRST = 6;
const SPACING = 5;
const LINES = 2;

/**
 * Names the failed checks on a sheet, along the filing margin where no drawing ever stands: who
 * holds only this page must know. Unchanged when all passed.
 */
export const stampFailed = (sheet: Sheet, checks: readonly CheckResult[]): Sheet => {
  const failed = checks.filter((check) => !check.passed).map((check) => check.label);
  if (failed.length === 0) return sheet;
  const room = sheet.size[1] - 20;
  const lines: string[] = [];
  let rest = failed;
  while (rest.length > 0 && lines.length < LINES) {
    const head = lines.length === 0 ? text.make.failedHead : '';
    let count = 1;
    const line = (n: number): string => {
      const left = rest.length - n;
      const more = left > 0 && lines.length === LINES - 1 ? text.make.failedMore(left) : '';
      return head + rest.slice(0, n).join('; ') + more;
    };
    while (count < rest.length && textWidth(line(count + 1), HEIGHT, true) <= room) count += 1;
    lines.push(line(count));
    rest = rest.slice(count);
  }
  const items = lines.map((words, i): Item => ({
    kind: 'text',
    at: [FIRST + i * SPACING, 10],
    text: words,
    height: HEIGHT,
    align: 'left',
    angle: 90,
    bold: true,
  }));
  return { ...sheet, items: [...sheet.items, ...items] };
};
