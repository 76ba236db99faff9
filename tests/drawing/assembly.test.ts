import { describe, expect, it } from 'vitest';
import { assemblySheets, type AssemblyInfo } from '../../src/drawing/assembly-sheets.ts';
import { sectionItems, type Section } from '../../src/drawing/belt-section.ts';
import { bodiesOf } from '../../src/drawing/bodies.ts';
import { explode } from '../../src/drawing/explode.ts';
import { frame } from '../../src/geometry/frame.ts';
import { hatch } from '../../src/drawing/hatch.ts';
import { ABOVE_SIDE, ISOMETRIC, projected, SIDE, type Eye } from '../../src/drawing/eye.ts';
import { ownersIn } from '../../src/drawing/owners.ts';
import { circle, polygon, rectangle, type Loop } from '../../src/geometry/loop.ts';
import type { Part } from '../../src/model/part.ts';
import { paintOrder } from '../../src/drawing/paint-order.ts';
import { scene } from '../../src/drawing/scene.ts';
import type { Vec2 } from '../../src/geometry/vector.ts';
import { clashes, outside } from './overlap.ts';
import { nose, parts, placements } from './parts.ts';
import { BLOCK } from './random-plate.ts';

const section: Section = {
  title: 'At the belt',
  shapes: [
    {
      points: [
        [0, -8],
        [0, 60],
      ],
      isClosed: false,
      stroke: 'visible',
      fill: 'none',
    },
    {
      points: [
        [0.8, -6],
        [30, -6],
        [30, 0],
        [0.8, 0],
      ],
      isClosed: true,
      stroke: 'visible',
      fill: 'hatch',
    },
  ],
  dimensions: [
    { kind: 'linear', axis: 'x', a: [0, 0], b: [4.65, 0], side: 'bottom', text: '4.65' },
    { kind: 'linear', axis: 'x', a: [0, -6], b: [0.8, -6], side: 'bottom', text: '0.8' },
    { kind: 'linear', axis: 'y', a: [30, -6], b: [30, 0], side: 'right', text: '6' },
    { kind: 'angle', vertex: [0, 0], from: 90, to: 93.5, radius: 45, text: '3.5°' },
    { kind: 'note', at: [20, -3], text: 'nose' },
    { kind: 'note', at: [0, 50], text: 'abrasive face' },
  ],
};

const info: AssemblyInfo = {
  title: 'Little rest',
  files: new Map([['base', 'plates/base_mm.dxf']]),
  order: ['Screw the nose to the base.', 'Set it to the belt.'],
  notes: ['Belt and blade are not shown.'],
  sections: [section],
};

const sheets = assemblySheets(parts, placements, info, BLOCK);
const textsOf = (index: number): string[] =>
  sheets[index]?.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])) ?? [];

describe('assembly drawing', () => {
  it('has elevations, an exploded and an assembled view and the section, with no text on anything', () => {
    expect(sheets).toHaveLength(4);
    expect(sheets.flatMap(clashes)).toEqual([]);
    expect(sheets.flatMap(outside)).toEqual([]);
  });

  it('lists every part with quantity, designation and file', () => {
    const texts = textsOf(0).join(' ');
    for (const part of parts) expect(texts).toContain(part.name);
    expect(texts).toContain('ISO 4762 - M6 x 20 - 8.8');
    expect(texts).toContain('plates/base_mm.dxf');
  });

  it('numbers every item in the exploded view and tells the order', () => {
    const balloons = textsOf(1).filter((t) => /^[1-5]$/.test(t));
    // Steps of the order and field numbers of the frame are numbers too: balloons are centred.
    const centred = sheets[1]?.items.flatMap((item) =>
      item.kind === 'text' && item.align === 'centre' && item.height === 3.5 ? [item.text] : [],
    );
    for (const item of ['1', '2', '3', '4', '5']) {
      expect(balloons).toContain(item);
      expect(centred).toContain(item);
    }
    expect(textsOf(1)).toContain('Screw the nose to the base.');
  });

  it('is true to scale: the side view is as large as the placed parts', () => {
    const view = scene(bodiesOf(parts, placements), SIDE, 1);
    // y from 0 to 80; z from the tip of the screw in the base (6 - 20) to the bar's end (6 + 50).
    expect(view.box.x0).toBeCloseTo(0);
    expect(view.box.x1).toBeCloseTo(80);
    expect(view.box.y0).toBeCloseTo(-14);
    expect(view.box.y1).toBeCloseTo(56);
    const above = scene(bodiesOf(parts, placements), ABOVE_SIDE, 0.5);
    // From above, near side (+x) at the foot: x from 0 to 120 runs down the paper.
    expect(above.box.y0).toBeCloseTo(-60);
    expect(above.box.y1).toBeCloseTo(0);
  });
});

/** What shows at a point of a picture, found without the painter: the nearest body along the ray. */
const nearest = (p: Vec2): string | undefined => {
  const hits = bodiesOf(parts, placements).flatMap((body) => {
    // From above the ray meets a body over its footprint; all frames here are axis-parallel.
    const [x, y] = [-p[1], p[0]];
    const local: Vec2 = [x - body.frame.origin[0], y - body.frame.origin[1]];
    const inside = (ring: readonly Vec2[]): boolean => {
      let isIn = false;
      ring.forEach(([x0, y0], i) => {
        const [x1, y1] = ring[(i + 1) % ring.length] ?? [x0, y0];
        if (
          y0 > local[1] !== y1 > local[1] &&
          local[0] < x0 + ((local[1] - y0) / (y1 - y0)) * (x1 - x0)
        )
          isIn = !isIn;
      });
      return isIn;
    };
    const hit = inside(body.outer) && !body.holes.some(inside);
    return hit ? [{ owner: body.owner, top: body.max[2] }] : [];
  });
  return hits.sort((a, b) => b.top - a.top)[0]?.owner;
};

describe('hidden-line removal', () => {
  it('shows from above what a ray from above meets first', () => {
    const view = scene(bodiesOf(parts, placements), ABOVE_SIDE, 1);
    let compared = 0;
    for (let x = 0.37; x < 120; x += 3.1)
      for (let y = 0.41; y < 80; y += 2.9) {
        const p: Vec2 = [y, -x];
        const face = view.faces.findLast(
          ({ rings }) =>
            rings.filter((ring) => {
              let isIn = false;
              ring.forEach(([x0, y0], i) => {
                const [x1, y1] = ring[(i + 1) % ring.length] ?? [x0, y0];
                if (y0 > p[1] !== y1 > p[1] && p[0] < x0 + ((p[1] - y0) / (y1 - y0)) * (x1 - x0))
                  isIn = !isIn;
              });
              return isIn;
            }).length %
              2 ===
            1,
        );
        expect(face?.owner).toBe(nearest(p));
        compared++;
      }
    expect(compared).toBeGreaterThan(900);
  });

  it('paints what stands behind before what stands in front', () => {
    const order = paintOrder(bodiesOf(parts, placements), ISOMETRIC).map((b) => b.owner);
    expect(order.indexOf('nut')).toBeLessThan(order.indexOf('base'));
    expect(order.indexOf('base')).toBeLessThan(order.indexOf('nose'));
    expect(order.indexOf('base')).toBeLessThan(order.indexOf('bar'));
  });
});

describe('a bar under an overhanging grip, and a screw in it', () => {
  // A wall 14 thick and 47 high whose grip reaches out 70 between 13 and 35; under it, longer than
  // the grip, a bar 6 high whose box no plane parts from the grip's, with a disc at its free end.
  const part = (id: string, outer: Loop, from: number, to: number): Part => ({
    ...nose,
    id,
    layers: [{ profile: { outer, holes: [] }, from, to }],
  });
  const grip: readonly Vec2[] = [
    [0, 0],
    [32, 0],
    [32, 13],
    [70, 13],
    [70, 35],
    [14, 35],
    [14, 47],
    [0, 47],
  ];
  const made = [
    part('grip', polygon(grip), 0, 80),
    part('bar', rectangle([-30, 40], [150, 60]), 2, 8),
    part('head', circle([140, 50], 5), 8, 14),
    // Lower than the wall, and on the grip all the same.
    part('disc', circle([65, 50], 5), 35, 40),
  ];
  const placed = made.map(({ id }) => ({
    part: id,
    name: id,
    carrier: 'ground' as const,
    touches: [],
    // The grip lies along x: its own x is y here, its own y is z.
    frame: id === 'grip' ? frame([0, 0, 0], [0, 1, 0], [0, 0, 1]) : frame([0, 0, 0]),
  }));
  const shownFrom = (eye: Eye) => ownersIn(scene(bodiesOf(made, placed), eye, 1));
  const shown = shownFrom(ISOMETRIC);

  // The grip's end, its face with the bar behind, its top; what reaches out of it, what is on that.
  it.each([
    ['grip', [80, 50, 24]],
    ['grip', [40, 70, 24]],
    ['grip', [40, 50, 35]],
    ['bar', [120, 60, 5]],
    ['head', [140, 50, 14]],
  ] as const)('shows the %s at %j', (owner, at) => {
    expect(shown(projected(at, ISOMETRIC, 1))).toBe(owner);
  });

  it.each([
    [ABOVE_SIDE, [40, 50, 0], 'grip'],
    [ABOVE_SIDE, [65, 50, 0], 'disc'],
    [ABOVE_SIDE, [120, 50, 0], 'bar'],
    [ABOVE_SIDE, [140, 50, 0], 'head'],
    [SIDE, [0, 50, 5], 'bar'],
    [SIDE, [0, 50, 11], 'head'],
    [SIDE, [0, 20, 5], 'grip'],
  ] as const)('from %j shows at %j the %s', (eye, at, owner) => {
    expect(shownFrom(eye)(projected(at, eye, 1))).toBe(owner);
  });
});

describe('exploded view', () => {
  const lifted = explode(parts, placements, 8);
  const extent = (name: string): readonly [number, number] => {
    const placed = lifted.filter((l) => l.placement.name === name).map((l) => l.placement);
    const bodies = bodiesOf(parts, placed);
    return [Math.min(...bodies.map((b) => b.min[2])), Math.max(...bodies.map((b) => b.max[2]))];
  };

  it('lifts a screw whole above what it goes through, and a plate above its nut', () => {
    expect(extent('screw-1')[0]).toBeGreaterThanOrEqual(extent('nose')[1] + 8 - 1e-9);
    expect(extent('nose')[0]).toBeGreaterThanOrEqual(extent('base')[1] + 8 - 1e-9);
    expect(extent('base')[0]).toBeGreaterThanOrEqual(extent('nut')[1] + 8 - 1e-9);
  });

  it('moves nothing sideways and keeps every placement', () => {
    expect(lifted.map((l) => l.placement.name).sort()).toEqual(
      placements.map((p) => p.name).sort(),
    );
    for (const { placement } of lifted) {
      const original = placements.find((p) => p.name === placement.name);
      expect(placement.frame.origin.slice(0, 2)).toEqual(original?.frame.origin.slice(0, 2));
    }
  });

  it('draws what is put together along the stroke apart along it, and nothing else', () => {
    const [level] = placements.filter(({ name }) => name === 'bar');
    if (!level) throw new Error('There is a bar.');
    // Two bars side by side: the right one goes further to the right.
    const beside = { ...level, name: 'bar-2', frame: frame([115, 55, 6]) };
    const [one, other] = explode(parts, [level, beside], 8, 'x').map(
      (l) => l.placement.frame.origin,
    );
    expect(one).toEqual([95, 55, 6]);
    expect(other).toEqual([123, 55, 6]);
  });
});

describe('section', () => {
  it('writes every dimension and note as given', () => {
    const texts = sectionItems(section, 2).flatMap((i) => (i.kind === 'text' ? [i.text] : []));
    expect(texts.sort()).toEqual(section.dimensions.map((d) => d.text).sort());
  });

  it('hatches a region inside its outline only, at 45 degrees', () => {
    const ring: Vec2[] = [
      [0, 0],
      [20, 0],
      [20, 10],
      [0, 10],
    ];
    const lines = hatch([ring]).flatMap((i) => (i.kind === 'line' ? [i] : []));
    expect(lines.length).toBeGreaterThan(6);
    for (const { a, b } of lines) {
      expect(b[1] - a[1]).toBeCloseTo(b[0] - a[0], 9);
      for (const [x, y] of [a, b]) {
        expect(x).toBeGreaterThanOrEqual(-1e-9);
        expect(x).toBeLessThanOrEqual(20 + 1e-9);
        expect(y).toBeGreaterThanOrEqual(-1e-9);
        expect(y).toBeLessThanOrEqual(10 + 1e-9);
      }
    }
  });

  it('leaves the pictures of parts without layers out', () => {
    expect(bodiesOf([nose], placements).every((b) => b.owner === 'nose')).toBe(true);
  });
});
