import { afterEach, describe, expect, it, vi } from 'vitest';
import { MOST_PAIRS } from '../../src/outline/dxf-pairs.ts';
import { readOutline } from '../../src/outline/read.ts';

const dxf = (...lines: (string | number)[]): Uint8Array =>
  new TextEncoder().encode(`${lines.join('\n')}\n`);
const line = (x: number, y: number, toX: number, toY: number): (string | number)[] => [
  ...[0, 'LINE', 8, 0],
  ...[10, x, 20, y, 11, toX, 21, toY],
];
const square = [line(0, 0, 9, 0), line(9, 0, 9, 3), line(9, 3, 0, 3), line(0, 3, 0, 0)].flat();
const file = (...inside: (string | number)[]): Uint8Array =>
  dxf(0, 'SECTION', 2, 'ENTITIES', ...inside, 0, 'ENDSEC', 0, 'EOF');

describe('a DXF that is not as its reader wants it', () => {
  const spies = (['log', 'warn', 'error'] as const).map((key) => vi.spyOn(console, key));
  afterEach(() => {
    // What goes to the console would stand in the JSON that a command prints.
    for (const spy of spies) expect(spy).not.toHaveBeenCalled();
  });

  it('is read without the pairs whose code has no type', async () => {
    const read = await readOutline(file(...square, 155, 'x', 5000, 1, 600, 2));
    expect(read.ok && read.value.contours).toHaveLength(1);
  });

  it('is refused where a code is none, or a section has no name', async () => {
    for (const bytes of [
      dxf(0, ...Array.from({ length: 2000 }, () => 'SECTION')),
      dxf(0, 'SECTION', 'x', 'ENTITIES', ...square),
      dxf(0, 'SECTION', 0, 'SECTION', 2, 'ENTITIES', ...square),
    ])
      expect((await readOutline(bytes)).issues).toMatchObject([{ code: 'damaged-file' }]);
  });

  it('is refused before it is read where it is too long', async () => {
    const long = dxf(0, 'SECTION', 2, `ENTITIES${'\n5\n1'.repeat(MOST_PAIRS)}`);
    expect((await readOutline(long)).issues).toMatchObject([{ code: 'too-much' }]);
  });
});
