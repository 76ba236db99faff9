import { describe, expect, it } from 'vitest';
import { partChanges, purchases } from '../../src/adapt/part-changes.ts';
import { circle, rectangle } from '../../src/geometry/loop.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import type { CrossHole, HardwarePart, Hole, PlatePart, StockPart } from '../../src/model/part.ts';

const hole = (id: string, at: Vec2, size = 5): Hole => ({
  id,
  at,
  size,
  loop: circle(at, size / 2),
  purpose: 'x',
});

const sheet = (holes: readonly Hole[], over: Partial<PlatePart> = {}, width = 80): PlatePart => ({
  kind: 'plate',
  id: 'base',
  name: 'Base',
  quantity: 1,
  material: 'Steel',
  finish: '',
  density: 7.85,
  layers: [
    {
      profile: { outer: rectangle([0, 0], [width, 40]), holes: holes.map(({ loop }) => loop) },
      from: 0,
      to: 6,
    },
  ],
  notes: [],
  tight: [],
  process: 'laser',
  holes,
  engraving: [],
  ...over,
});

describe('what becomes of a part', () => {
  const a = hole('a', [10, 10]);
  const b = hole('b', [30, 10]);
  const change = (from: PlatePart, to: PlatePart) => partChanges([from], [to])[0];

  it('is nothing where shape, material and threads are the same, whatever it is called', () => {
    const renamed = sheet([b, a], { name: 'Other', notes: ['x'], finish: 'painted' });
    expect(change(sheet([a, b]), renamed)).toMatchObject({ change: 'unchanged', quantity: 0 });
  });

  it('is drilling where only round holes are added, making again where one has to go', () => {
    expect(change(sheet([a]), sheet([a, b]))).toMatchObject({
      change: 'rework',
      reasons: ['drill b in the part at hand'],
    });
    expect(change(sheet([a, b]), sheet([a]))).toMatchObject({
      change: 'remake',
      reasons: ['without hole b'],
    });
  });

  it('is no drilling where anything else differs as well, or pieces are short', () => {
    const line: Vec2[] = [
      [1, 1],
      [2, 2],
    ];
    const at = sheet([a], { engraving: [line] });
    const more = (over: Partial<PlatePart>) => sheet([a, b], { engraving: [line], ...over });
    expect(change(at, more({}))).toMatchObject({ change: 'rework' });
    const others: [Partial<PlatePart>, string][] = [
      [{ engraving: [line.map(([x, y]): Vec2 => [x + 3, y])] }, 'marks differ'],
      [{ material: 'Aluminium' }, 'material Steel -> Aluminium'],
      [{ process: 'saw-drill' }, 'process laser -> saw-drill'],
    ];
    for (const [over, reason] of others) {
      const told = change(at, more(over));
      expect(told, reason).toMatchObject({ change: 'remake' });
      expect(told?.reasons).toContain(reason);
    }
    expect(change(at, more({ quantity: 2 }))).toMatchObject({ change: 'remake', quantity: 2 });
    expect(change({ ...at, quantity: 2 }, more({}))).toMatchObject({ change: 'rework' });
    const slot: Hole = { ...b, slotLength: 20 };
    expect(change(at, sheet([a, slot], { engraving: [line] }))).toMatchObject({ change: 'remake' });
  });

  it('is making again for each thing that counts, and says which', () => {
    const thicker = sheet([a], { layers: sheet([a]).layers.map((one) => ({ ...one, to: 8 })) });
    const cases: [PlatePart, string][] = [
      [sheet([a], {}, 90), 'size 80 x 40 x 6 -> 90 x 40 x 6 mm'],
      [thicker, 'size 80 x 40 x 6 -> 80 x 40 x 8 mm'],
      [sheet([a], { material: 'Aluminium' }), 'material Steel -> Aluminium'],
      [sheet([a], { process: 'saw-drill' }), 'process laser -> saw-drill'],
      [sheet([hole('a', [13, 14])]), 'hole a moved by up to 5 mm'],
      [sheet([hole('a', [10.2, 10])]), 'hole a moved by up to 0.2 mm'],
      [sheet([hole('a', [10, 10], 6)]), 'other size of a'],
      [sheet([{ ...a, thread: 'M6' }]), 'other size of a'],
      [
        sheet([a], {
          engraving: [
            [
              [1, 1],
              [2, 2],
            ],
          ],
        }),
        'marks differ',
      ],
    ];
    for (const [to, reason] of cases)
      expect(change(sheet([a]), to)).toMatchObject({ change: 'remake', reasons: [reason] });
  });

  it('tells of holes that moved the farthest way', () => {
    const moved = sheet([hole('a', [10, 11]), hole('b', [33, 14])]);
    expect(change(sheet([a, b]), moved)).toMatchObject({
      reasons: ['holes a, b moved by up to 5 mm'],
    });
  });

  it('is making again where a bar is drilled to another depth, face, thread or place', () => {
    const bar = (over: Partial<CrossHole>): StockPart => ({
      ...sheet([]),
      kind: 'stock',
      section: 'EN 10059 20 x 20',
      crossHoles: [
        {
          id: 'c',
          face: 'y',
          at: [10, 5],
          size: 5,
          depth: 12,
          thread: 'M6',
          purpose: 'x',
          ...over,
        },
      ],
    });
    const found = (over: Partial<CrossHole>) => partChanges([bar({})], [bar(over)])[0]?.change;
    expect(found({ purpose: 'other' })).toBe('unchanged');
    const others: Partial<CrossHole>[] = [
      { depth: 'through' },
      { depth: 14 },
      { face: 'x' },
      { at: [10, 6] },
      { size: 5.5 },
    ];
    for (const over of others) expect(found(over), JSON.stringify(over)).toBe('remake');
    expect(found({ thread: 'M5' })).toBe('remake');
  });

  it('counts pieces, new parts, parts left over, and parts under another name', () => {
    expect(change(sheet([a]), sheet([a], { quantity: 3 }))).toMatchObject({
      change: 'more',
      quantity: 2,
    });
    expect(partChanges([], [sheet([a])])).toMatchObject([{ change: 'new', quantity: 1 }]);
    expect(partChanges([sheet([a])], [])).toMatchObject([{ change: 'left-over', quantity: 1 }]);
    const [same] = partChanges([sheet([a])], [sheet([a], { id: 'other' })]);
    expect(same).toMatchObject({ part: 'other', change: 'unchanged' });
  });
});

describe('what is bought', () => {
  const bought = (designation: string, quantity: number, name = 'Screw'): HardwarePart => ({
    ...sheet([]),
    kind: 'hardware',
    id: `${name.toLowerCase()}-${designation}`,
    name,
    designation,
    quantity,
  });
  const [long, short] = ['ISO 4762 M6 x 30', 'ISO 4762 M6 x 20'];

  it('is counted by designation over all its uses, what is at hand against what is needed', () => {
    const before = [bought(long, 2), bought(long, 4, 'Clamp'), bought(short, 3)];
    const after = [bought(long, 8), bought(short, 2), bought(short, 1, 'Clamp'), bought('pin', 1)];
    expect(purchases(before, after)).toEqual([
      { designation: long, name: 'Screw', have: 6, need: 8 },
      { designation: 'pin', name: 'Screw', have: 0, need: 1 },
    ]);
    expect(purchases(after, [])).toContainEqual({
      designation: short,
      name: 'Clamp',
      have: 3,
      need: 0,
    });
  });
});
