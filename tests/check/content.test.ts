import { describe, expect, it } from 'vitest';
import { createBodyNames } from '../../src/check/content.ts';
import { prepare, type Body, type Motion } from '../../src/check/distance/index.ts';
import { shift, WORLD } from '../../src/geometry/frame.ts';
import { valueOf } from '../family/examples.ts';

const ROOM = 1e-12;

const box = (wide: number, motion?: Motion): Body => {
  const solid = valueOf(prepare('box', { kind: 'box', frame: WORLD, size: [wide, 10, 10] }));
  return { name: 'box', solids: [solid], chordError: 0, ...(motion ? { motion } : {}) };
};

const way = (far: number, label = ''): Motion => [
  { kind: 'glide', label, from: WORLD, to: shift(WORLD, [far, 0, 0]) },
];

describe('the name of a body', () => {
  it('is the same for bodies made anew of the same numbers', () => {
    const nameOf = createBodyNames();
    expect(nameOf(box(10))).toBe(nameOf(box(10)));
    expect(nameOf(box(10, way(5)))).toBe(nameOf(box(10, way(5))));
  });

  it('is another one as soon as a last bit, a label or the chord error is', () => {
    const nameOf = createBodyNames();
    const names = [
      box(10),
      box(10 + 2 * ROOM),
      box(10, way(5)),
      box(10, way(5 + ROOM)),
      box(10, way(5, 'second')),
      { ...box(10), chordError: 0.005 },
    ].map(nameOf);
    expect(new Set(names).size).toBe(names.length);
  });

  it('tells solids apart that its quick sum takes for one', () => {
    // The sum weighs the first corner's x by 1 and y by 2: what one gains the other loses.
    const hull = (x: number, y: number): Body => {
      const points = [
        [x, y, 0],
        [9, 0, 0],
        [0, 9, 0],
        [0, 0, 9],
      ] as const;
      return {
        name: 'hull',
        solids: [valueOf(prepare('hull', { kind: 'hulls', hulls: [points] }))],
        chordError: 0,
      };
    };
    const nameOf = createBodyNames();
    const first = nameOf(hull(2, 0));
    expect(nameOf(hull(0, 1))).not.toBe(first);
    expect(nameOf(hull(2, 0))).toBe(first);
  });

  it('tells motions apart that its quick sum takes for one, or that another label later on parts', () => {
    // The sum weighs the origin's x by 1 and y by 2, and names the first label alone.
    const to = (x: number, y: number): Motion => [
      { kind: 'still', label: '', pose: shift(WORLD, [x, y, 0]) },
    ];
    const twice = (label: string): Motion => [...way(5), ...way(5, label)];
    const nameOf = createBodyNames();
    expect(nameOf(box(10, to(0, 1)))).not.toBe(nameOf(box(10, to(2, 0))));
    expect(nameOf(box(10, twice('there')))).not.toBe(nameOf(box(10, twice('back'))));
  });

  it('is not given to a body on a course, which only running it tells', () => {
    const course: Motion = [{ kind: 'course', label: '', pose: () => WORLD, travel: 0, turn: 0 }];
    expect(createBodyNames()(box(10, course))).toBeUndefined();
  });
});
