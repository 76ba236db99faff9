import { describe, expect, it } from 'vitest';
import { frame, WORLD } from '../../src/geometry/frame.ts';
import { path, type Vertex } from '../../src/geometry/loop.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import type { Shape } from '../../src/check/distance/shape.ts';
import { barMesh, blockMesh, body, gap, measure, mesh, turned } from './shapes.ts';

// Expected values: elementary geometry, written out beside each case.
const sin = (d: number) => Math.sin((d * Math.PI) / 180);
const cos = (d: number) => Math.cos((d * Math.PI) / 180);

/** Certified from below, and tight: at most 0.001 under, never over. */
const expectGap = (value: number, expected: number): void => {
  expect(value).toBeLessThanOrEqual(expected + 1e-6);
  expect(value).toBeGreaterThanOrEqual(expected - 0.0011);
};

const box = (x: number, y: number, z: number, at = WORLD): Shape => ({
  kind: 'box',
  size: [x, y, z],
  frame: at,
});
const floor = body('floor', [{ kind: 'half-space', point: [0, 0, 0], normal: [0, 0, 1] }]);

describe('gaps of exact shapes', () => {
  it('boxes face to face, edge to edge and corner to corner', () => {
    const a = body('a', [box(10, 10, 10)]);
    expectGap(gap(a, body('b', [box(4, 4, 4, frame([10, 0, 0]))])), 3);
    expectGap(gap(a, body('b', [box(4, 4, 4, frame([10, 11, 0]))])), 5);
    expectGap(gap(a, body('b', [box(4, 4, 4, frame([8, 9, 9]))])), 3);
  });

  it('the same, whatever direction is given for them to keep off in, and however long', () => {
    const block = (name: string, low: Vec3, high: Vec3) =>
      body(name, [{ kind: 'mesh', mesh: blockMesh(low, high) }]);
    const [a, b] = [block('a', [0, 0, 10], [9, 8, 12]), block('b', [-5, -5, 0], [20, 20, 7])];
    for (const z of [30, 1, 0.01, 0, -30]) expectGap(gap(a, b, { along: [0, 0, z], within: 4 }), 3);
  });

  it('a turned box corner over a face', () => {
    // A square of side 4 turned by 45 degrees reaches 2 sqrt 2 below its centre.
    const b = body('b', [box(4, 4, 4, turned([1, 0, 0], 45, [0, 0, 10]))]);
    expectGap(gap(body('a', [box(10, 10, 10)]), b), 5 - 2 * Math.SQRT2);
    expectGap(gap(floor, b), 10 - 2 * Math.SQRT2);
  });

  it('a tilted rim over a plane', () => {
    // Axis tilted by q from the normal: the rim reaches r sin q + h/2 cos q below the centre.
    for (const q of [0, 3.5, 30, 89, 90]) {
      const [s, c] = [sin(q), cos(q)];
      const bar = body('bar', [
        { kind: 'cylinder', from: [5 * s, 0, 40 - 5 * c], to: [-5 * s, 0, 40 + 5 * c], radius: 20 },
      ]);
      const expected = 40 - (20 * s + 5 * c);
      expectGap(gap(floor, bar), expected);
      const slab = body('slab', [box(400, 400, 20, frame([0, 0, -10]))]);
      expectGap(gap(slab, bar), expected);
      const meshed = { kind: 'mesh', mesh: blockMesh([-200, -200, -20], [200, 200, 0]) } as const;
      expectGap(gap(body('slab', [meshed]), bar), expected);
    }
  });

  it('cylinders parallel, skew and end on', () => {
    const a = body('a', [{ kind: 'cylinder', from: [0, 0, -50], to: [0, 0, 50], radius: 10 }]);
    const parallel: Shape = { kind: 'cylinder', from: [30, 40, -5], to: [30, 40, 90], radius: 15 };
    expectGap(gap(a, body('b', [parallel])), 50 - 25);
    const skew: Shape = { kind: 'cylinder', from: [-50, 33, 0], to: [50, 33, 20], radius: 12 };
    expectGap(gap(a, body('b', [skew])), 33 - 22);
    const endOn: Shape = { kind: 'cylinder', from: [0, 0, 51], to: [0, 0, 80], radius: 3 };
    expectGap(gap(a, body('b', [endOn])), 1);
    // Rim to rim: 6 across, 8 along.
    const rims: Shape = { kind: 'cylinder', from: [21, 0, 58], to: [21, 0, 80], radius: 5 };
    expectGap(gap(a, body('b', [rims])), 10);
  });

  it('a faceted hollow that turns and slides along a bar', () => {
    // A facet of 2 q seen from the axis is r cos q off it, wherever it has turned to.
    const [sides, span, inner, outer] = [12, 60, 30, 36];
    const at = (i: number, r: number, x: number): Vec3 => {
      const angle = (span * i) / sides - span / 2;
      return [x, r * sin(angle), -r * cos(angle)];
    };
    const rows = Array.from({ length: sides + 1 }, (_, i) => [
      at(i, inner, -20),
      at(i, inner, 20),
      at(i, outer, 20),
      at(i, outer, -20),
    ]);
    const quads = Array.from({ length: 4 * sides }, (_, k) => {
      const [i, j] = [4 * Math.floor(k / 4), k % 4];
      return [i + j, i + ((j + 1) % 4), i + 4 + ((j + 1) % 4), i + 4 + j];
    });
    const ends = [[3, 2, 1, 0], [0, 1, 2, 3].map((j) => 4 * sides + j)];
    const triangles = [...quads, ...ends].flatMap(([a = 0, b = 0, c = 0, d = 0]) => [
      a,
      b,
      c,
      a,
      c,
      d,
    ]);
    const hollow = { kind: 'mesh', mesh: mesh(rows.flat(), triangles) } as const;
    const facet = inner * cos(span / sides / 2);
    for (const radius of [29, 20]) {
      const bar = body('bar', [{ kind: 'cylinder', from: [-99, 0, 0], to: [99, 0, 0], radius }]);
      for (const [from, to, slid] of [
        [0, 0, 0],
        [-2, 2, 30],
        [80, 83, -30],
      ] as const) {
        const moved = body(
          'hollow',
          [hollow],
          [
            {
              kind: 'glide',
              label: '',
              from: turned([1, 0, 0], from),
              to: turned([1, 0, 0], to, [slid, 0, 0]),
            },
          ],
        );
        expectGap(gap(moved, bar), facet - radius);
      }
    }
  });

  it('touching faces are a gap of nothing', () => {
    const a = body('a', [box(10, 10, 10)]);
    const touching = measure(a, body('b', [box(4, 4, 4, frame([7, 0, 0]))]));
    expect(touching.state).toBe('hit');
    const meshed = body('c', [{ kind: 'mesh', mesh: blockMesh([5, -3, -2], [9, 3, 2]) }]);
    expect(measure(a, meshed).state).toBe('hit');
  });
});

describe('belt', () => {
  // Two wheels of radius 50, axes along z, 200 apart in y; a belt 1.5 thick, 50 wide.
  const v = (x: number, y: number, bulge: number): Vertex => ({ x, y, bulge });
  const loop = path([v(50, 0, 0), v(50, 200, 1), v(-50, 200, 0), v(-50, 0, 1)]);
  const belt = body('belt', [
    { kind: 'belt', frame: WORLD, path: loop, thickness: 1.5, width: 50 },
  ]);

  it('runs and arcs stand off by the belt thickness', () => {
    expectGap(gap(belt, body('b', [box(2, 2, 2, frame([60, 100, 0]))])), 59 - 51.5);
    // On the wheel's line of centres, below; and at 45 degrees with a bar along z.
    expectGap(gap(belt, body('b', [box(2, 2, 2, frame([0, -60, 0]))])), 59 - 51.5);
    const bar: Shape = { kind: 'cylinder', from: [50, -50, -9], to: [50, -50, 9], radius: 4 };
    expectGap(gap(belt, body('b', [bar])), 50 * Math.SQRT2 - 4 - 51.5);
    // Beside the belt: 30 - 1 - 25.
    expectGap(gap(belt, body('b', [box(2, 2, 2, frame([51, 100, 30]))])), 4);
  });

  it('its inside is free, up to the inner face', () => {
    expectGap(gap(belt, body('b', [box(20, 20, 20, frame([0, 100, 0]))])), 40);
    // A bar on the wheel's axis: 50 - 30 all round, less the fill of the sectors' chords.
    const hub: Shape = { kind: 'cylinder', from: [0, 0, -9], to: [0, 0, 9], radius: 30 };
    expectGap(gap(belt, body('b', [hub])) + 0.0005, 20);
  });

  it('is found inside though something outside is nearly as near', () => {
    // 1 mm off the outer arc, and half a millimetre off the inner one on the other side.
    const outside = box(2, 2, 2, frame([0, -52.5 - 1, 0]));
    const inside = box(2, 2, 2, frame([0, 250 - 0.5 - 1, 0]));
    const both = [
      [outside, inside],
      [inside, outside],
    ];
    // The corner of the box is nearer to the arc than its middle: sqrt(1 + 49.5²).
    for (const shapes of both) {
      const found = gap(belt, body('b', shapes));
      expect(found).toBeLessThanOrEqual(50 - Math.hypot(1, 49.5) + 1e-6);
      // The inner arc is cut into chords that stand 0.0005 proud of it at most.
      expect(found).toBeGreaterThanOrEqual(50 - Math.hypot(1, 49.5) - 0.0016);
    }
  });

  it('a hollow bend has its belt on the inner side of the arc', () => {
    // A path that turns right about (0, 60) with a radius of 40: its outside is towards that middle.
    const hollow = path([
      { x: -40, y: 60, bulge: 0 },
      { x: -40, y: -60, bulge: 0 },
      { x: 40, y: -60, bulge: 0 },
      { x: 40, y: 60, bulge: -1 },
    ]);
    // Seen from the middle of the bend: 40 of radius, less 2 of belt, less 5 of the bar.
    const bent = body('belt', [
      { kind: 'belt', frame: WORLD, path: hollow, thickness: 2, width: 20 },
    ]);
    const bar: Shape = { kind: 'cylinder', from: [0, 60, -5], to: [0, 60, 5], radius: 5 };
    expectGap(gap(bent, body('b', [bar])) + 0.0005, 40 - 2 - 5);
  });

  it('what may be left of an error is told: gap and error together are never below the true gap', () => {
    const hub: Shape = { kind: 'cylinder', from: [0, 0, -9], to: [0, 0, 9], radius: 30 };
    const plates = [0, 13].map((z) =>
      body('plate', [box(10, 10, 10, frame([0, 0, z]))], undefined, 0.02),
    );
    const [low, high] = plates;
    if (!low || !high) throw new Error('no plates');
    for (const [a, b, truth] of [
      [belt, body('hub', [hub]), 20],
      [low, high, 3],
    ] as const) {
      const found = measure(a, b);
      if (found.state !== 'apart') throw new Error('not apart');
      expect(found.gap).toBeLessThanOrEqual(truth - a.chordError - b.chordError + 1e-6);
      expect(found.gap + found.error).toBeGreaterThanOrEqual(truth - 1e-9);
      // What is asked for within is asked of the true surfaces: chords and all.
      expect(measure(a, b, { within: truth - a.chordError - b.chordError + 0.002 }).state).toBe(
        'apart',
      );
    }
  });

  it('an outward corner is rounded by the thickness', () => {
    const square = path([v(-10, -10, 0), v(10, -10, 0), v(10, 10, 0), v(-10, 10, 0)]);
    const band = body('band', [
      { kind: 'belt', frame: WORLD, path: square, thickness: 2, width: 20 },
    ]);
    const bar: Shape = { kind: 'cylinder', from: [13, 14, -5], to: [13, 14, 5], radius: 1 };
    expectGap(gap(band, body('b', [bar])), 5 - 2 - 1);
  });
});

describe('hits', () => {
  const block = body('block', [{ kind: 'mesh', mesh: blockMesh([-20, -20, -20], [20, 20, 20]) }]);

  it('finds crossings', () => {
    const crossing = measure(block, body('b', [box(10, 10, 100, turned([1, 1, 0], 20))]));
    expect(crossing).toMatchObject({ state: 'hit', how: 'crossing' });
    expect(crossing.state !== 'beyond' && crossing.gap).toBeLessThanOrEqual(0);
  });

  it('finds a solid wholly inside another, either way round, however far its surface', () => {
    const small = body('small', [{ kind: 'mesh', mesh: barMesh(3, -2, 2, 12) }]);
    for (const options of [{}, { within: 1 }]) {
      expect(measure(block, small, options)).toMatchObject({ state: 'hit', how: 'inside' });
      expect(measure(small, block, options)).toMatchObject({ state: 'hit', how: 'inside' });
      const ball = body('ball', [{ kind: 'cylinder', from: [0, 0, 0], to: [1, 0, 0], radius: 1 }]);
      expect(measure(block, ball, options)).toMatchObject({ state: 'hit', how: 'inside' });
    }
  });

  it('finds the last of many parts of one body inside another', () => {
    const pieces = [200, 300, 400, 0].map((x) => blockMesh([x - 1, -1, -1], [x + 1, 1, 1]));
    const vertices = pieces.flatMap((one) => [...one.vertices]);
    const triangles = pieces.flatMap((one, i) => [...one.triangles].map((v) => v + 8 * i));
    const many = {
      vertices: Float64Array.from(vertices),
      triangles: Uint32Array.from(triangles),
    };
    const crumbs = body('crumbs', [{ kind: 'mesh', mesh: many }]);
    const block = body('block', [{ kind: 'mesh', mesh: blockMesh([-9, -9, -9], [9, 9, 9]) }]);
    for (const [a, b] of [
      [crumbs, block],
      [block, crumbs],
    ] as const)
      expect(measure(a, b)).toMatchObject({ state: 'hit', how: 'inside' });
  });

  it('tells a pin in a hole from a pin in a solid', () => {
    const tube = barMesh(10, -5, 5, 24);
    const holed = barMesh(5, -5, 5, 24);
    // Outer wall and reversed inner wall; the end faces of both are made of the rings alone.
    const n = 24;
    const walls = (m: number[], from: number, flip: boolean): number[] => {
      for (let i = 0; i < n; i++) {
        const j = (i + 1) % n;
        const quad = [i, j, n + j, i, n + j, n + i].map((k) => k + from);
        m.push(...(flip ? quad.reverse() : quad));
      }
      return m;
    };
    const triangles = walls(walls([], 0, false), 2 * n, true);
    for (let i = 0; i < n; i++) {
      const j = (i + 1) % n;
      triangles.push(2 * n + i, j, i, 2 * n + i, 2 * n + j, j);
      triangles.push(3 * n + i, n + i, n + j, 3 * n + i, n + j, 3 * n + j);
    }
    const ring = body('ring', [
      {
        kind: 'mesh',
        mesh: {
          vertices: Float64Array.of(
            ...tube.vertices.subarray(0, 6 * n),
            ...holed.vertices.subarray(0, 6 * n),
          ),
          triangles: Uint32Array.from(triangles),
        },
      },
    ]);
    const pin = body('pin', [{ kind: 'cylinder', from: [0, 0, -1], to: [0, 0, 1], radius: 4 }]);
    // The facet's middle is nearer than its corners: 5 cos(pi/24) - 4.
    expectGap(gap(ring, pin), 5 * Math.cos(Math.PI / 24) - 4);
    expect(measure(body('solid', [{ kind: 'mesh', mesh: tube }]), pin).state).toBe('hit');
  });
});

describe('faceted rounds', () => {
  it('never report more than the true round bar leaves', () => {
    for (const sides of [6, 17, 64]) {
      const chord = 12 * (1 - Math.cos(Math.PI / sides));
      const bar = body(
        'bar',
        [{ kind: 'mesh', mesh: barMesh(12, -5, 5, sides) }],
        undefined,
        chord,
      );
      for (let angle = 0; angle < 360; angle += 13.7) {
        const at = turned([0, 0, 1], angle, [0, 0, 0]);
        const block = body('block', [
          box(4, 4, 4, frame([20 * at.x[0], 20 * at.x[1], 0], at.x, at.y)),
        ]);
        const found = gap(bar, block);
        expect(found).toBeLessThanOrEqual(18 - 12 + 1e-9);
        expect(found).toBeGreaterThanOrEqual(18 - 12 - chord - 0.0011);
      }
    }
  });
});
