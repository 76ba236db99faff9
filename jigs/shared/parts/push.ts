import {
  ok,
  path,
  rounded,
  chain,
  type PrintPart,
  type Result,
  type Vec2,
  type Vertex,
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

/**
 * A pad: round nose at x = 0 that stands `above` the groove it slides in, a rib back to a web on
 * the guard's face, and the tenon behind it; z about the groove's middle.
 */
const padOutline = (c: Context, above: number, play: number) => {
  const { padReach } = c.l.push;
  const r = PAD.noseRadius;
  const web = padReach - PAD.web;
  const [low, high] = [Math.min(above, 0) - r, Math.max(above, 0) + r];
  const tenon = tee(0, -play / 2);
  const corner = (x: number, y: number, bulge = 0): Vertex => ({ x, y, bulge });
  return path([
    corner(r, above - r),
    ...(above > 0 ? [corner(web, above - r), corner(web, low)] : []),
    corner(padReach, low),
    ...[...tenon.below, ...tenon.above].map(([x, z]) => corner(x + padReach, z)),
    corner(padReach, high),
    ...(above < 0 ? [corner(web, high), corner(web, above + r)] : []),
    corner(r, above + r, 1),
  ]);
};

/** One pad, number i; two of the first, which works hardest. */
const padPart = (c: Context, height: number, i: number): PrintPart => {
  const { name, density, play } = printed(c);
  const { padHalf, pad } = c.l.push;
  return {
    kind: 'print',
    id: i === 0 ? 'push-pad' : `push-pad-${String(i + 1)}`,
    name: words.names.pushPad(i + 1),
    quantity: i === 0 ? 2 : 1,
    material: name,
    density,
    finish: words.finish.print,
    layers: [
      {
        profile: { outer: padOutline(c, height - pad, play), holes: [] },
        from: 0,
        to: 2 * padHalf,
      },
    ],
    holes: [],
    notes: [
      words.notes.padHeight(height + c.l.levels.plate),
      words.notes.padSlide,
      words.notes.padWear,
    ],
    tight: [],
  };
};

/** The pad that stands level with its groove. */
export const pushPad = (c: Context): PrintPart => padPart(c, c.l.push.pad, 0);

/** The pads, one for each height. */
export const pushPads = (c: Context): PrintPart[] =>
  c.l.push.pads.map((height, i) => padPart(c, height, i));
