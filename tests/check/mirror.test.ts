import { describe, expect, it } from 'vitest';
import { compose, frame, type Frame } from '../../src/geometry/frame.ts';
import { circle, rectangle } from '../../src/geometry/loop.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { createWorkspace, sweepsOf, type Body } from '../../src/check/distance/body.ts';
import { isMirrorImage } from '../../src/check/distance/likeness.ts';
import type { Motion, Sweep } from '../../src/check/distance/motion.ts';
import type { Shape } from '../../src/check/distance/shape.ts';
import { touch } from '../../src/check/distance/touch.ts';
import type { Mesh } from '../../src/model/mesh.ts';
import type { Layer } from '../../src/model/part.ts';
import { prismsOf } from '../../src/model/prisms.ts';
import { meshOf } from '../../src/model/solid.ts';
import { bevelOf, cutsOf } from '../../jigs/edge-rest/blade.ts';
import { mirrored } from '../../jigs/shared/pose/sides.ts';
import { bladeMesh } from '../../src/blade/blade-mesh.ts';
import { examplesOf, valueOf } from '../family/examples.ts';
import { blockMesh, body, bumpyMesh, gap, measure, random, turned } from './shapes.ts';

/** A plate with two holes, the right one and the right end moved from where a mirror wants them. */
const layersOf = (hole: Vec3 = [0, 0, 0], end = 0): Layer[] => [
  {
    from: 0,
    to: 6,
    profile: {
      outer: rectangle([-40, -10], [40 + end, 20]),
      holes: [circle([-25.3, 4.7], 3), circle([25.3 + hole[0], 4.7 + hole[1]], 3 + hole[2])],
    },
  },
];

/** The same plate by its surface, and filled with prisms. */
const PLATES: readonly ((layers: readonly Layer[]) => Shape)[] = [
  (layers) => ({ kind: 'mesh', mesh: valueOf(meshOf(layers, { chord: 0.005, volumeShare: 1 })) }),
  (layers) => ({ kind: 'prisms', prisms: valueOf(prismsOf(layers, 0.005)) }),
];

const isAlike = (shapes: readonly Shape[], axis: 0 | 1 | 2): boolean =>
  isMirrorImage(body('it', shapes).solids, axis);

/** A mesh and its image in the plane at right angles to an axis, as two solids. */
const both = (one: Mesh, axis: 0 | 1 | 2, off = 0): Shape[] => {
  const image = one.vertices.map((value, i) => (i % 3 === axis ? -value : value));
  const at = image.findIndex((_, i) => i === 3 * 5 + axis);
  image[at] = (image[at] ?? 0) + off;
  const back = Array.from({ length: one.triangles.length }, (_, i) => {
    const k = i % 3;
    return one.triangles[i + (k === 1 ? 1 : k === 2 ? -1 : 0)] ?? 0;
  });
  return [
    { kind: 'mesh', mesh: one },
    { kind: 'mesh', mesh: { vertices: image, triangles: Uint32Array.from(back) } },
  ];
};

describe('a body that is its own mirror image', () => {
  it('is known however it is cut into triangles or prisms', () => {
    for (const plate of PLATES) {
      const shape = plate(layersOf());
      expect([0, 1, 2].map((axis) => isAlike([shape], axis as 0 | 1 | 2))).toEqual([
        true,
        false,
        false,
      ]);
      const lying = { ...shape, frame: turned([0, 0, 1], 90, [5, 0, -3]) } as Shape;
      expect(isAlike([lying], 1)).toBe(true);
      expect(isAlike([{ ...lying, frame: turned([0, 0, 1], 89.99, [5, 0, -3]) } as Shape], 1)).toBe(
        false,
      );
      expect(isAlike([{ ...shape, frame: frame([0, 0, -3]) } as Shape], 2)).toBe(true);
    }
    // A block has one diagonal a face, which a mirror turns about.
    const block = { kind: 'mesh', mesh: blockMesh([-2, -3, -4], [2, 3, 4]) } as const;
    for (const axis of [0, 1, 2] as const) expect(isAlike([block], axis)).toBe(true);
    expect(isAlike([{ ...block, frame: turned([0, 0, 1], 1) }], 0)).toBe(false);
  });

  it('is not where a hole, its size or an end is off by a hundredth', () => {
    for (const plate of PLATES) {
      expect(isAlike([plate(layersOf([0.01, 0, 0]))], 0)).toBe(false);
      expect(isAlike([plate(layersOf([0, -0.01, 0]))], 0)).toBe(false);
      expect(isAlike([plate(layersOf([0, 0, 0.01]))], 0)).toBe(false);
      expect(isAlike([plate(layersOf([0, 0, 0], 0.01))], 0)).toBe(false);
    }
  });

  it('is every blade that is ground alike on both sides', () => {
    for (const { file, design } of [...examplesOf('spine-rest'), ...examplesOf('edge-rest')]) {
      for (const blade of design.blades) {
        const sides = cutsOf(blade);
        const [left = 0, right = 0] = [bevelOf(blade, 'left'), bevelOf(blade, 'right')];
        // To the last digits: heights are told as angles.
        const alike = Math.abs(left - right) < 1e-9 && blade.edge.shareLeft === 0.5;
        const { blade: solid } = bladeMesh(blade, { chord: 0.005, sides });
        expect(isAlike([{ kind: 'mesh', mesh: solid }], 2), file).toBe(alike);
        expect(isAlike([{ kind: 'mesh', mesh: bladeMesh(blade, { chord: 0.005 }).blade }], 2)).toBe(
          true,
        );
      }
    }
  });

  it('may be made of several solids, each the image of another', () => {
    const next = random(11);
    for (const axis of [0, 1, 2] as const) {
      const rough = bumpyMesh(next, 5, 0.6, 6, 8);
      expect(isAlike(both(rough, axis), axis)).toBe(true);
      expect(isAlike(both(rough, axis), ((axis + 1) % 3) as 0 | 1 | 2)).toBe(false);
      expect(isAlike(both(rough, axis, 0.001), axis)).toBe(false);
      expect(isAlike(both(rough, axis).slice(0, 1), axis)).toBe(false);
    }
  });

  it('may be a box, a cylinder, a hull, a belt or a half space', () => {
    const pin = { kind: 'cylinder', from: [-9, 1, 2], to: [9, 1, 2], radius: 3 } as const;
    expect(isAlike([pin], 0)).toBe(true);
    expect(isAlike([pin], 1)).toBe(false);
    expect(isAlike([{ ...pin, to: [9.001, 1, 2] }], 0)).toBe(false);
    const post = { ...pin, from: [3, 1, 0], to: [3, 1, 9] } as const;
    expect(isAlike([post], 0)).toBe(false);
    expect(isAlike([post, { ...post, from: [-3, 1, 9], to: [-3, 1, 0] }], 0)).toBe(true);
    expect(isAlike([post, { ...post, from: [-3, 1, 9], to: [-3, 1, 0], radius: 2 }], 0)).toBe(
      false,
    );
    // As thick and about the same middle, but shorter.
    expect(isAlike([post, { ...post, from: [-3, 1, 1], to: [-3, 1, 8] }], 0)).toBe(false);
    const floor = { kind: 'half-space', point: [0, 0, 4], normal: [0, 0, 1] } as const;
    expect(isAlike([floor], 0)).toBe(true);
    expect(isAlike([floor], 2)).toBe(false);
    expect(isAlike([{ ...floor, normal: [0.001, 0, 1] }], 0)).toBe(false);
    const hull = (x: number): Shape => ({
      kind: 'hulls',
      hulls: [
        [
          [-4, 0, 0],
          [4, 0, 0],
          [x, 5, 0],
          [0, 0, 7],
        ],
      ],
    });
    expect(isAlike([hull(0)], 0)).toBe(true);
    expect(isAlike([hull(0.001)], 0)).toBe(false);
    // Upright, its width to both sides of x = 0; round its two wheels it is no image of itself.
    const upright: Frame = { origin: [0, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] };
    const belt: Shape = {
      kind: 'belt',
      frame: upright,
      width: 50,
      thickness: 1.5,
      path: {
        kind: 'path',
        vertices: [
          { x: 0, y: -20, bulge: 0 },
          { x: 100, y: -30, bulge: 1 },
          { x: 100, y: 30, bulge: 0 },
          { x: 0, y: 20, bulge: 1 },
        ],
      },
    };
    expect(isAlike([belt], 0)).toBe(true);
    expect(isAlike([belt], 1)).toBe(false);
    const aside = { ...belt, frame: { ...upright, origin: [0.001, 0, 0] } } as const;
    expect(isAlike([aside], 0)).toBe(false);
  });
});

const strokes = (next: () => number): Sweep[] => {
  const pose = (): Frame =>
    turned([next() - 0.5, next() - 0.5, 1], 60 * next(), [
      30 * next() - 5,
      25 + 12 * next(),
      8 * next(),
    ]);
  const poses = Array.from({ length: 4 }, pose);
  return poses.slice(1).map((to, i): Sweep => {
    const from = poses[i] ?? to;
    return { kind: 'glide', label: `left ${String(i)}`, from, to };
  });
};

const inMirror = (sweep: Sweep): Sweep =>
  sweep.kind === 'glide'
    ? { ...sweep, label: 'right', from: mirrored(sweep.from), to: mirrored(sweep.to) }
    : sweep;

/** A thin body whose thickness is the same to both sides. */
const thin = (next: () => number): Shape[] => both(bumpyMesh(next, 4, 0.7, 5, 7), 2);

const kept = (a: Body, b: Body): number => sweepsOf(createWorkspace(), a, b).length;

describe('movements of which one is the mirror image of the other', () => {
  it('are looked at once, and the gap is that of all of them', () => {
    const next = random(5);
    for (let i = 0; i < 12; i++) {
      const blade = thin(next);
      const left = strokes(next);
      const all: Motion = [...left, ...left.map(inMirror)];
      const rest = both(bumpyMesh(next, 9, 0.5, 6, 9), 0);
      const still = body('rest', rest);
      const moving = body('blade', blade, all);
      expect(kept(moving, still)).toBe(3);
      const one = gap(moving, still);
      // The second half alone, and each movement with a rest that no mirror explains.
      const half = gap(body('blade', blade, left.map(inMirror)), still);
      const crumb: Shape = {
        kind: 'cylinder',
        from: [300, 0, 0],
        to: [300, 0, 1],
        radius: 1,
      };
      const uneven = body('rest', [...rest, crumb]);
      expect(kept(moving, uneven)).toBe(6);
      expect(Math.abs(one - half)).toBeLessThanOrEqual(0.001);
      expect(Math.abs(one - gap(moving, uneven))).toBeLessThanOrEqual(0.001);
    }
  });

  it('are all looked at where something stands on one side alone', () => {
    const next = random(8);
    const left = strokes(next);
    const moving = body('blade', thin(next), [...left, ...left.map(inMirror)]);
    // On the side that the second half of the movements passes.
    const at = left[1]?.kind === 'glide' ? mirrored(left[1].from).origin : ([0, 0, 0] as const);
    const pin: Shape = {
      kind: 'cylinder',
      from: [at[0], at[1] + 9, -30],
      to: [at[0], at[1] + 9, 30],
      radius: 1,
    };
    const far: Shape = { kind: 'mesh', mesh: blockMesh([-20, -30, -9], [20, -25, 9]) };
    const alone = body('pin', [far, pin]);
    expect(kept(moving, alone)).toBe(6);
    const found = measure(moving, alone);
    expect(found.state === 'beyond' ? '' : found.at.label).toBe('right');
    // The image of the pin on the other side makes it alike; then half the movements tell the same.
    const image: Shape = {
      ...pin,
      from: [-at[0], at[1] + 9, -30],
      to: [-at[0], at[1] + 9, 30],
    };
    const pair = body('pins', [far, pin, image]);
    expect(kept(moving, pair)).toBe(3);
    expect(gap(moving, pair)).toBeCloseTo(found.state === 'beyond' ? NaN : found.gap, 2);
  });

  it('are no images where one is off by a thousandth, or runs the other way', () => {
    const next = random(3);
    const left = strokes(next);
    const still = body('rest', [{ kind: 'box', frame: turned([0, 0, 1], 0), size: [9, 9, 9] }]);
    const blade = thin(next);
    const off = left.map(inMirror).map((sweep): Sweep => {
      if (sweep.kind !== 'glide') return sweep;
      const { from } = sweep;
      return {
        ...sweep,
        from: {
          ...from,
          origin: [from.origin[0] + 0.001, ...from.origin.slice(1)] as unknown as Vec3,
        },
      };
    });
    expect(kept(body('blade', blade, [...left, ...off]), still)).toBe(6);
    const back = left
      .map(inMirror)
      .map((sweep): Sweep =>
        sweep.kind === 'glide' ? { ...sweep, from: sweep.to, to: sweep.from } : sweep,
      );
    expect(kept(body('blade', blade, [...left, ...back]), still)).toBe(6);
    const course = left
      .map(inMirror)
      .map((sweep): Sweep =>
        sweep.kind === 'glide'
          ? { kind: 'course', label: '', pose: () => sweep.from, travel: 0, turn: 0 }
          : sweep,
      );
    expect(kept(body('blade', blade, [...left, ...course]), still)).toBe(6);
    // Of two that both turn and glide the ends tell not all either: a point goes a curved way.
    const [first] = left;
    if (first?.kind !== 'glide') throw new Error('no glide');
    const quarter = turned([0, 0, 1], 60);
    const glide = (from: Frame, to: Frame): Sweep => ({ kind: 'glide', label: '', from, to });
    const moving = body('blade', blade, [
      first,
      glide(mirrored(first.from), compose(quarter, mirrored(first.to))),
    ]);
    const stood: Sweep = { kind: 'still', label: '', pose: frame([0, 0, 0]) };
    const turning = { ...still, motion: [stood, glide(stood.pose, quarter)] };
    expect(kept(moving, turning)).toBe(2);
    // Where they start and end tells nothing of a course, which may go elsewhere between.
    const aside = left.map(inMirror).map((sweep): Sweep =>
      sweep.kind === 'glide'
        ? {
            kind: 'course',
            label: '',
            pose: (t) => (t < 0.5 ? sweep.from : sweep.to),
            travel: 900,
            turn: 900,
          }
        : sweep,
    );
    expect(kept(body('blade', blade, [...left, ...aside]), still)).toBe(6);
  });

  it('are all looked at where a contact has a place of its own', () => {
    const foot: Shape = { kind: 'mesh', mesh: blockMesh([-0.5, -1, -1], [0.5, 1, 1]) };
    const at = (x: number): Frame => frame([x, 0, 1]);
    const step = (from: number, to: number): Sweep => ({
      kind: 'glide',
      label: '',
      from: at(from),
      to: at(to),
    });
    const seat = body('seat', [{ kind: 'mesh', mesh: blockMesh([-3, -3, -2], [3, 3, 0]) }]);
    const moving = body('foot', [foot], [step(-2, -1.8), step(2, 1.8)]);
    expect(kept(moving, seat)).toBe(1);
    const issues = (x: number): string[] => {
      const region = { frame: at(x), size: [1.5, 8, 8] } as const;
      const rule = { kind: 'touch', a: 'foot', b: 'seat', tolerance: 0.01, region } as const;
      const found = valueOf(touch(createWorkspace(), moving, seat, { ...rule, apart: [0, 0, 1] }));
      return found.issues.map(({ code }) => code);
    };
    expect(issues(-2)).toEqual(['contact-elsewhere', 'contact-elsewhere']);
    expect(issues(2)).toEqual(['contact-elsewhere', 'contact-elsewhere']);
  });
});
