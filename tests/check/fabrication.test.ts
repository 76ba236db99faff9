import { describe, expect, it } from 'vitest';
import { fabricationChecks } from '../../src/check/rules.ts';
import { circle, rectangle } from '../../src/geometry/loop.ts';
import type { Hole, Part, PlatePart, PrintPart } from '../../src/model/part.ts';
import { steel } from './shapes.ts';

// Limits of the ways of making: laser web and hole half the thickness at least (common practice, no
// source); printed walls of three lines, what print design guides advise for parts under load.

const hole = (x: number, size: number): Hole => ({
  id: `hole-${String(x)}`,
  loop: circle([x, 20], size / 2),
  at: [x, 20],
  size,
  purpose: 'test',
});

const layer = (holes: readonly Hole[], to: number) => ({
  profile: { outer: rectangle([0, 0], [100, 40]), holes: holes.map(({ loop }) => loop) },
  from: 0,
  to,
});

const plate = (thickness: number, ...holes: Hole[]): PlatePart => ({
  ...steel,
  kind: 'plate',
  id: 'part',
  name: 'Part',
  process: 'laser',
  holes,
  engraving: [],
  layers: [layer(holes, thickness)],
});

const print = (...holes: Hole[]): PrintPart => ({
  ...steel,
  kind: 'print',
  id: 'part',
  name: 'Part',
  holes,
  layers: [layer(holes, 10)],
});

const failed = (part: Part, nozzle = 0.4): string[] =>
  fabricationChecks([part], nozzle).flatMap(({ id, passed }) => (passed ? [] : [id]));

describe('what is cut and printed', () => {
  it('keeps webs of half the thickness of the sheet', () => {
    // Two holes of 8 mm, their middles 8 mm and the web apart.
    expect(failed(plate(12, hole(30, 8), hole(30 + 8 + 6, 8)))).toEqual([]);
    expect(failed(plate(12, hole(30, 8), hole(30 + 8 + 5.9, 8)))).toEqual(['fabrication/part/web']);
    expect(failed(plate(10, hole(30, 8), hole(30 + 8 + 5.9, 8)))).toEqual([]);
    expect(failed(plate(12, hole(3.9 + 6, 8)))).toEqual(['fabrication/part/web']);
  });

  it('has no hole smaller than half the thickness, the least of several told', () => {
    expect(failed(plate(12, hole(30, 6), hole(60, 9)))).toEqual([]);
    expect(failed(plate(12, hole(30, 9), hole(60, 5.9)))).toEqual(['fabrication/part/hole']);
    // In thin sheet a hole may be 1 mm, where a web has to be 1.5 mm (common practice, no source).
    expect(failed(plate(1.5, hole(30, 1)))).toEqual([]);
    expect(failed(plate(1.5, hole(30, 0.9)))).toEqual(['fabrication/part/hole']);
  });

  it('is printed with walls of three lines and holes of 2 mm', () => {
    const at = (wall: number, size = 8) => print(hole(wall + size / 2, size));
    expect(failed(at(1.2))).toEqual([]);
    expect(failed(at(1.1))).toEqual(['fabrication/part/wall']);
    expect(failed(at(1.2), 0.6)).toEqual(['fabrication/part/wall']);
    expect(failed(at(3, 1.9))).toEqual(['fabrication/part/hole']);
  });
});
