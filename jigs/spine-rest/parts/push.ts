import {
  ok,
  path,
  polygon,
  rounded,
  chain,
  type PrintPart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { PAD } from '../layout/sizes.ts';
import { printed, words, type Context } from './context.ts';

/**
 * T-shaped groove or tenon about a height z, depth along +x from a face at x = 0: corners in the
 * order of rising depth below, then back above.
 */
const tee = (z: number, grow: number): { below: Vec2[]; above: Vec2[] } => {
  const neck = PAD.neckHalf + grow;
  const head = PAD.headHalf + grow;
  const [start, end] = [PAD.neckDepth - grow, PAD.neckDepth + PAD.headDepth + grow];
  return {
    below: [
      [0, z - neck],
      [start, z - neck],
      [start, z - head],
      [end, z - head],
    ],
    above: [
      [end, z + head],
      [start, z + head],
      [start, z + neck],
      [0, z + neck],
    ],
  };
};

/** Where the handle rises to the guard wall. */
const guardStep = (handle: number, guard: number): [Vec2, number][] => [
  [[PAD.wall, handle], 6],
  [[PAD.wall, guard], 2],
];

/**
 * The push block, profile in y (from the guard's face towards the hand) and z (from the step's
 * top), printed lying on its side: foot, guard wall, handle, and the groove of the pad.
 */
export const pushBody = (c: Context): Result<PrintPart> => {
  const { l } = c;
  const { half, pad, foot, footHeight, handle, depth, guard } = l.push;
  const { name, density } = printed(c);
  const { below, above } = tee(pad, 0);
  const back: [Vec2, number][] = [
    [[0, 0], 0],
    [[foot, 0], 2],
    [[foot, footHeight], 4],
    [[depth, footHeight], 4],
    [[depth, handle], 6],
    ...(guard > handle ? guardStep(handle, guard) : []),
    [[0, guard], 2],
  ];
  // Down the front face again, round the groove.
  const groove: [Vec2, number][] = [...below, ...above].reverse().map((p) => [p, 0]);
  const corners = [...back, ...groove];
  const outline = rounded(
    corners.map(([p]) => p),
    corners.map(([, r]) => r),
  );
  return chain(outline, (outer) =>
    ok({
      kind: 'print',
      id: 'push-block',
      name: words.names.pushBody,
      quantity: 1,
      material: name,
      density,
      finish: words.finish.print,
      layers: [{ profile: { outer, holes: [] }, from: 0, to: 2 * half }],
      holes: [],
      notes: [words.notes.printSolid, words.notes.printAway],
      tight: [],
    }),
  );
};

/** The pad: round nose at x = 0, tenon behind; z about its own middle. */
export const pushPad = (c: Context): PrintPart => {
  const { name, density, play } = printed(c);
  const { padReach, padHalf } = c.l.push;
  const { below, above } = tee(0, -play / 2);
  const shifted = ([x, z]: Vec2): Vec2 => [x + padReach, z];
  const r = PAD.noseRadius;
  const tenon = polygon([...below.map(shifted), ...above.map(shifted)]).vertices;
  return {
    kind: 'print',
    id: 'push-pad',
    name: words.names.pushPad,
    quantity: 2,
    material: name,
    density,
    finish: words.finish.print,
    layers: [
      {
        profile: {
          outer: path([
            { x: r, y: -r, bulge: 0 },
            { x: padReach, y: -r, bulge: 0 },
            ...tenon,
            { x: padReach, y: r, bulge: 0 },
            { x: r, y: r, bulge: 1 },
          ]),
          holes: [],
        },
        from: 0,
        to: 2 * padHalf,
      },
    ],
    holes: [],
    notes: [words.notes.padSlide, words.notes.padWear],
    tight: [],
  };
};
