import { createWorkshop } from '../../src/check/workshop.ts';
import { describe, expect, it } from 'vitest';
import { shankOf } from '../../src/check/bores.ts';
import { bodyOf, partForms } from '../../src/check/assembly.ts';
import { createWorkspace } from '../../src/check/distance/index.ts';
import type { Fit } from '../../src/check/fit.ts';
import { fitOf, type Standing } from '../../src/check/fits.ts';
import { frame, type Frame } from '../../src/geometry/frame.ts';
import { circle, polygon, rectangle } from '../../src/geometry/loop.ts';
import { capScrewPart, dowelPinPart, nutPart, washerPart } from '../../src/hardware/index.ts';
import type { CrossHole, Hole, Part, PlatePart, StockPart } from '../../src/model/part.ts';
import { valueOf } from '../family/examples.ts';
import { steel } from './shapes.ts';

/** A plate 40 x 40 x 6 with one round hole at its middle. */
const plate = (id: string, size: number, thread?: string): PlatePart => {
  const hole: Hole = {
    id: 'h',
    loop: circle([0, 0], size / 2),
    at: [0, 0],
    size,
    purpose: 'passage',
    ...(thread === undefined ? {} : { thread }),
  };
  return {
    ...steel,
    kind: 'plate',
    id,
    name: id,
    process: 'laser',
    holes: [hole],
    engraving: [],
    layers: [
      { profile: { outer: rectangle([-20, -20], [20, 20]), holes: [hole.loop] }, from: 0, to: 6 },
    ],
  };
};

/** A bar 12 x 6 along z, drilled across along y at z = 20. */
const bar = (hole: Partial<CrossHole>): StockPart => ({
  ...steel,
  kind: 'stock',
  id: 'bar',
  name: 'bar',
  section: 'flat 12 x 6',
  layers: [{ profile: { outer: rectangle([0, 0], [12, 6]), holes: [] }, from: 0, to: 40 }],
  holes: [],
  crossHoles: [
    { id: 'c', face: 'y', at: [6, 20], size: 6.6, depth: 'through', purpose: 'passage', ...hole },
  ],
});

const standing = (part: Part, at: Frame): Standing => {
  const placement = {
    part: part.id,
    name: part.id,
    frame: at,
    carrier: 'ground',
    touches: [],
  } as const;
  const forms = valueOf(partForms([part], createWorkshop()));
  const body = valueOf(bodyOf(part.id, [placement], forms));
  return { part, placement, body, solid: at };
};

const fit = (one: Standing, other: Standing): Fit => {
  const there = valueOf(fitOf(createWorkspace(), one, other, 0.02, createWorkshop()));
  const back = valueOf(fitOf(createWorkspace(), other, one, 0.02, createWorkshop()));
  expect(back.state).toBe(there.state);
  return there;
};

const screw = valueOf(capScrewPart('M6', 20));
const pin = valueOf(dowelPinPart(6, 20));
/** A screw from above, its head's underside at z. */
const from = (x: number, z = 6): Standing => standing(screw, frame([x, 0, z]));

// Sizes: ISO 273 normal series 6.6 for M6; tap drill 5.0 (ISO 2306): play 0.3 mm a side.
describe('parts that are said to touch', () => {
  it('a screw passes its clearance hole until its play is used up', () => {
    const plain = standing(plate('plate', 6.6), frame([0, 0, 0]));
    expect(fit(from(0), plain).state).toBe('seated');
    expect(fit(from(0.25), plain).state).toBe('seated');
    expect(fit(from(0.33), plain).state).toBe('crossing');
    expect(fit(from(12), plain).state).toBe('crossing');
    expect(fit(from(0, 6.5), plain).state).toBe('apart');
    const sunk = fit(from(0, 5.9), plain);
    expect(sunk.state).toBe('crossing');
    // A knurled head of 10.22 mm (ISO 4762) 0.1 mm deep around a hole of 6.6: the area of a ring.
    expect(sunk.shared?.()).toBeCloseTo((Math.PI / 4) * (10.22 ** 2 - 6.6 ** 2) * 0.1, 1);
  });

  it('only what is solid is a shank: no washer and no nut goes into a hole', () => {
    expect(shankOf(valueOf(capScrewPart('M6', 20)))?.diameter).toBeCloseTo(6, 9);
    expect(shankOf(valueOf(dowelPinPart(6, 20)))?.diameter).toBeCloseTo(6, 9);
    expect(shankOf(washerPart('M6', 'plain'))).toBeUndefined();
    expect(shankOf(nutPart('M6', 'full'))).toBeUndefined();
  });

  it('a thread holds its screw only where it stands in the middle, and no head in the plate', () => {
    const tapped = standing(plate('plate', 5, 'M6'), frame([0, 0, 0]));
    expect(fit(from(0, 12), tapped)).toMatchObject({ state: 'held', bore: { off: 0 } });
    expect(fit(from(0), tapped).state).toBe('held');
    expect(fit(from(0.04, 12), tapped).state).toBe('held');
    const aside = fit(from(0.06, 12), tapped);
    expect(aside.state).toBe('crossing');
    expect(aside.bore?.off).toBeCloseTo(0.06, 9);
    expect(fit(from(0, 5.9), tapped).state).toBe('crossing');
    // The same small hole without a thread is no place for a screw.
    expect(fit(from(0, 12), standing(plate('plate', 5), frame([0, 0, 0]))).state).toBe('crossing');
  });

  it('a pin is pressed into a reamed hole, and into no smaller one', () => {
    const at = standing(pin, frame([0, 0, -7]));
    expect(fit(at, standing(plate('plate', 5.8), frame([0, 0, 0]))).state).toBe('held');
    expect(fit(at, standing(plate('plate', 5), frame([0, 0, 0]))).state).toBe('crossing');
    expect(fit(at, standing(plate('plate', 6.1), frame([0, 0, 0]))).state).toBe('apart');
  });

  it('a hole across a bar is where its drawing says, though the mesh leaves it out', () => {
    // The bar lies with its y up: local z along x of the assembly.
    const lying = (hole: Partial<CrossHole>): Standing =>
      standing(bar(hole), { origin: [0, 0, 0], x: [0, 1, 0], y: [0, 0, 1], z: [1, 0, 0] });
    const down = (x: number): Standing => standing(screw, frame([x, 6, 6]));
    expect(fit(down(20), lying({})).state).toBe('held');
    expect(fit(down(20.25), lying({})).state).toBe('held');
    expect(fit(down(20.35), lying({}))).toMatchObject({ state: 'crossing' });
    expect(fit(down(14), lying({})).bore?.off).toBeCloseTo(6, 9);
    expect(fit(down(20.06), lying({ size: 5, thread: 'M6' })).state).toBe('crossing');
  });

  it('a part in a corner comes free aslant, one that is sunk in does not', () => {
    const angle: Part = {
      ...plate('angle', 1),
      holes: [],
      layers: [
        {
          profile: {
            outer: polygon([
              [0, 0],
              [20, 0],
              [20, 4],
              [4, 4],
              [4, 20],
              [0, 20],
            ]),
            holes: [],
          },
          from: 0,
          to: 30,
        },
      ],
    };
    const block: Part = {
      ...plate('block', 1),
      holes: [],
      layers: [{ profile: { outer: rectangle([4, 4], [12, 12]), holes: [] }, from: 5, to: 25 }],
    };
    const inCorner = (by: number) =>
      fit(standing(angle, frame([0, 0, 0])), standing(block, frame([by, 0, 0]))).state;
    expect(inCorner(0)).toBe('seated');
    expect(inCorner(-0.05)).toBe('crossing');
    expect(inCorner(0.05)).toBe('seated');
  });

  // Surfaces that cross could end in a search as a pair of points a micron apart, and so as a gap: of
  // these pushes some came free by a move that leaves the shank a tenth of a millimetre in the wall.
  it('a shank in the wall of its hole crosses, whichever way and however far it is pushed', () => {
    const hole = standing(plate('plate', 6.6), frame([0, 0, 0]));
    const seated = Array.from({ length: 24 }, (_, i) => i).filter((i) => {
      const [a, off] = [(i * 137.508 * Math.PI) / 180, 0.36 + 0.02 * (i % 30)];
      const at = frame([off * Math.cos(a), off * Math.sin(a), 6]);
      const found = valueOf(
        fitOf(createWorkspace(), standing(screw, at), hole, 0.02, createWorkshop()),
      );
      return found.state !== 'crossing';
    });
    expect(seated).toEqual([]);
  });
});
