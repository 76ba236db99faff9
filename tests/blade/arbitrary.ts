import fc from 'fast-check';
import type { Bevel, Blade } from '../../src/blade/schema.ts';

const rounded = (min: number, max: number, steps = 1000) =>
  fc.integer({ min: 0, max: steps }).map((i) => min + ((max - min) * i) / steps);

const bevel: fc.Arbitrary<Bevel> = fc.oneof(
  rounded(0.15, 0.95).map((share): Bevel => ({ kind: 'height', height: 10 * share + 4 })),
  rounded(2, 8).map((angle): Bevel => ({ kind: 'angle', angle })),
  fc.constant<Bevel>({ kind: 'full' }),
  fc.constant<Bevel>({ kind: 'none' }),
);

/** Blades across the ranges; not every one passes the rules that hold fields together. */
export const anyBlade: fc.Arbitrary<Blade> = fc
  .record({
    length: rounded(60, 300),
    height: rounded(15, 70),
    fall: rounded(0, 0.1),
    belly: rounded(0, 0.7),
    drop: rounded(0, 0.8),
    tip: rounded(0, 0.6),
    sagitta: rounded(-2, 2),
    ricasso: rounded(0, 20),
    t: rounded(1.2, 6),
    taper: rounded(0.4, 1),
    radius: rounded(0, 0.5),
    share: rounded(0.2, 0.8),
    left: bevel,
    right: bevel,
  })
  .map((r): Blade => {
    const bellyHeight = r.height * (1 - r.fall);
    return {
      name: 'Random',
      quantity: 1,
      outline: {
        kind: 'dimensions',
        length: r.length,
        heelHeight: r.height,
        bellyStart: r.belly * r.length,
        bellyHeight,
        spineDropStart: r.drop * r.length,
        tipDrop: r.tip * bellyHeight,
        spineSagitta: r.sagitta,
      },
      ricasso: r.ricasso,
      tang: { kind: 'tang', length: 90, height: 12, thickness: 3, drop: 2 },
      thickness: [
        { u: 0, t: r.t },
        { u: r.length, t: r.t * r.taper },
      ],
      spineRadius: r.radius,
      edge: { asHeatTreated: 0.5, wanted: 0.2, shareLeft: r.share },
      bevels: { left: r.left, right: r.right },
      line: { follow: 'share', allowed: 1 },
    };
  });

/** A plain blade with a straight spine to the tip: areas and volumes have closed forms. */
export const plainBlade: Blade = {
  name: 'Plain',
  quantity: 1,
  outline: {
    kind: 'dimensions',
    length: 140,
    heelHeight: 30,
    bellyStart: 80,
    bellyHeight: 30,
    spineDropStart: 100,
    tipDrop: 0,
    spineSagitta: 0,
  },
  ricasso: 10,
  tang: { kind: 'tang', length: 100, height: 15, thickness: 3, drop: 5 },
  thickness: [{ u: 0, t: 3 }],
  spineRadius: 0,
  edge: { asHeatTreated: 0.7, wanted: 0.2, shareLeft: 0.5 },
  bevels: { left: { kind: 'height', height: 20 }, right: { kind: 'height', height: 20 } },
  line: { follow: 'share', allowed: 1 },
};
