import type { Issue } from '../core/issue.ts';
import { fail, ok, type Result } from '../core/result.ts';
import { circle, hexagon, type Loop } from '../geometry/loop.ts';
import type { HardwarePart, Layer } from '../model/part.ts';
import { text } from '../text/index.ts';
import { materialOf } from './materials.ts';
import { nut, washer, type NutKind, type WasherSeries } from './nuts.ts';
import { dowelPin, type PinDiameter } from './pins.ts';
import { buttonScrew, capScrew, countersunkScrew, setScrew } from './screws.ts';
import { diameterOf, type Thread } from './threads.ts';

/**
 * Bought pieces as parts. The layers show the outer shape, threads as plain cylinders of the
 * nominal diameter: right for clearances, a little heavy for mass. Local z: screws have z = 0
 * under the head (countersunk: at its face; set screw: at the socket end) and their shank
 * towards -z; nuts, washers, pins and rods stand on z = 0 and reach up.
 */

const words = text.model.hardware;

const disc = (diameter: number): Loop => circle([0, 0], diameter / 2);

const layer = (outer: Loop, from: number, to: number, ...holes: Loop[]): Layer => ({
  profile: { outer, holes },
  from,
  to,
});

const part = (designation: string, name: string, layers: readonly Layer[]): HardwarePart => ({
  kind: 'hardware',
  id: designation.toLowerCase().replace(/[^a-z0-9]+/g, '-'),
  name,
  quantity: 1,
  // Which steel, its designation says: its strength class or hardness.
  material: words.steel,
  density: materialOf('steel').density,
  finish: words.asBought,
  layers,
  notes: [],
  tight: [],
  designation,
});

/** The part, when the standard lists its length. */
const listed = (
  row: { readonly standard: string; readonly lengths: readonly number[] },
  size: string,
  length: number,
  make: () => HardwarePart,
): Result<HardwarePart> => {
  if (row.lengths.includes(length)) return ok(make());
  const issue: Issue = {
    code: 'length-not-listed',
    severity: 'error',
    path: '',
    ...words.notListed(`${row.standard} ${size}`, length, row.lengths),
  };
  return fail(issue);
};

const shank = (thread: Thread, length: number): Layer =>
  layer(disc(diameterOf(thread)), -length, 0);

/** "M6 x 20". */
const sized = (thread: Thread, length: number): string => `${thread} x ${String(length)}`;

export const capScrewPart = (thread: Thread, length: number): Result<HardwarePart> => {
  const row = capScrew(thread);
  const floor = row.headHeight - row.socketDepth;
  return listed(row, thread, length, () =>
    part(`ISO 4762 - ${sized(thread, length)} - 8.8`, words.capScrew(sized(thread, length)), [
      shank(thread, length),
      layer(disc(row.headDiameter), 0, floor),
      layer(disc(row.headDiameter), floor, row.headHeight, hexagon([0, 0], row.key)),
    ]),
  );
};

/** The domed head as the cylinder around it. */
export const buttonScrewPart = (thread: Thread, length: number): Result<HardwarePart> => {
  const row = buttonScrew(thread);
  return listed(row, thread, length, () =>
    part(`ISO 7380-1 - ${sized(thread, length)} - 10.9`, words.buttonScrew(sized(thread, length)), [
      shank(thread, length),
      layer(disc(row.headDiameter), 0, row.headHeight),
    ]),
  );
};

/** Steps that stand for a conical head: each as wide as the cone's upper end in it. */
const CONE_STEPS = 8;

export const countersunkScrewPart = (thread: Thread, length: number): Result<HardwarePart> => {
  const row = countersunkScrew(thread);
  const d = diameterOf(thread);
  const step = row.headHeight / CONE_STEPS;
  const cone = Array.from({ length: CONE_STEPS }, (_, i) =>
    layer(disc(row.headDiameter - 2 * i * step), -(i + 1) * step, 0 - i * step),
  );
  return listed(row, thread, length, () =>
    part(
      `ISO 10642 - ${sized(thread, length)} - 10.9`,
      words.countersunkScrew(sized(thread, length)),
      [layer(disc(d), -length, -row.headHeight), ...cone],
    ),
  );
};

/** The socket is left out. */
export const setScrewPart = (thread: Thread, length: number): Result<HardwarePart> =>
  listed(setScrew(thread), thread, length, () =>
    part(`ISO 4026 - ${sized(thread, length)} - 45H`, words.setScrew(sized(thread, length)), [
      shank(thread, length),
    ]),
  );

/** Strength classes of the usual nuts: ISO 898-2 (from memory). */
const NUT_CLASS: Readonly<Record<NutKind, string>> = { full: '8', thin: '04', lock: '8' };

export const nutPart = (thread: Thread, kind: NutKind = 'full'): HardwarePart => {
  const row = nut(thread, kind);
  return part(`${row.standard} - ${thread} - ${NUT_CLASS[kind]}`, words.nut[kind](thread), [
    layer(hexagon([0, 0], row.acrossFlats), 0, row.height, disc(diameterOf(thread))),
  ]);
};

export const washerPart = (thread: Thread, series: WasherSeries = 'plain'): HardwarePart => {
  const row = washer(thread, series);
  const size = thread.slice(1);
  return part(`${row.standard} - ${size} - 200 HV`, words.washer[series](thread), [
    layer(disc(row.outerDiameter), 0, row.thickness, disc(row.innerDiameter)),
  ]);
};

export const dowelPinPart = (diameter: PinDiameter, length: number): Result<HardwarePart> => {
  const size = `${String(diameter)} x ${String(length)}`;
  return listed(dowelPin(diameter), String(diameter), length, () =>
    part(`ISO 8734 - ${size} - A - St`, words.dowelPin(size), [layer(disc(diameter), 0, length)]),
  );
};

/** Threaded rod, DIN 976-1 (from memory), sawn to any length in whole millimetres. */
export const threadedRodPart = (thread: Thread, length: number): Result<HardwarePart> => {
  if (length >= 1 && length <= 1000 && Number.isInteger(length))
    return ok(
      part(`DIN 976-1 - ${sized(thread, length)} - 8.8`, words.threadedRod(sized(thread, length)), [
        layer(disc(diameterOf(thread)), 0, length),
      ]),
    );
  const issue: Issue = {
    code: 'rod-length',
    severity: 'error',
    path: '',
    ...words.rodLength(length),
  };
  return fail(issue);
};
