import {
  chain,
  ok,
  radians,
  rounded,
  tan,
  type Frame,
  type PrintPart,
  type Result,
  type Vec2,
  type Vec3,
} from '../../../src/family/index.ts';
import { GUIDE } from '../layout/sizes.ts';
import { printed, words, type Context } from './context.ts';

/** Proportions of the stick, mm: width, half height of its nose, foot, handle, and its stop. */
const STICK = {
  width: 16,
  nose: 3,
  heel: GUIDE.padReach + 22,
  rise: 14,
  head: 30,
  handle: 22,
  grip: 100,
  stop: 18,
  stopWidth: 6,
} as const;
/** Room that fingers take under the handle, and a hand to either side of it, mm. */
const FINGERS = 25;
const HAND_HALF = 40;

/** Cosine and sine of the handle's slope: 45 degrees, over the feed and towards the nose. */
const SLOPE = Math.SQRT1_2;

/** Height of the nose over the step: that of the lowest pad, mm. */
export const stickHeight = ({ l }: Context): number => Math.min(l.push.pad, ...l.push.pads);

/** A point of the handle: `a` along it, `b` square to it, from where its lower face starts. */
const onHandle = (a: number, b: number): Vec2 => [
  STICK.heel + SLOPE * (a - b),
  STICK.rise + SLOPE * (a + b),
];

/**
 * Along the handle to the face of the stop: the hand then stays `handDistance` behind the nose, or
 * behind a belt that leans over it from there.
 */
const stopAt = (c: Context, head: number): number => {
  const [behind, above] = onHandle(0, STICK.handle + STICK.stop);
  const [, upper] = onHandle(0, STICK.handle);
  const over = Math.max(0, -tan(radians(c.lean)));
  const away = c.v.handDistance * Math.hypot(1, over) - behind + over * above;
  // It also stands clear of the head over the nose.
  return Math.max(away / (SLOPE * (1 - over)), (head - upper) / SLOPE + 20);
};

/** Top of the stick over its nose, mm. */
const headOf = (c: Context): number => Math.max(stickHeight(c) + GUIDE.padReach, STICK.head);

/** A placed stick: its nose at y = `nose`, standing at the height `level`. */
export const stickFrame = (nose: number, level: number): Frame => ({
  origin: [-STICK.width / 2, nose, level],
  x: [0, 1, 0],
  y: [0, 0, 1],
  z: [1, 0, 0],
});

/** Where the hand holds the stick, its nose at y = 0 and its foot at z = 0: a box about the grip. */
export const stickHand = (c: Context): { readonly frame: Frame; readonly size: Vec3 } => {
  const from = stopAt(c, headOf(c));
  const [low, high] = [-FINGERS, STICK.handle + STICK.stop];
  const [y, z] = onHandle(from + STICK.grip / 2, (low + high) / 2);
  return {
    frame: { origin: [0, y, z], x: [1, 0, 0], y: [0, SLOPE, SLOPE], z: [0, -SLOPE, SLOPE] },
    size: [2 * HAND_HALF, STICK.grip, high - low],
  };
};

/**
 * The push stick for the last of the tip, where the block is too wide: profile in y (from its
 * nose towards the hand) and z (from the step's top). It stands on the step, so its nose has the
 * height of the lowest pad; its handle rises at 45 degrees, clear of feed and knob and pointing at
 * the nose, so that the push does not tip it; a stop keeps the hand behind.
 */
export const pushStick = (c: Context, where: string): Result<PrintPart> => {
  const { name, density } = printed(c);
  const height = stickHeight(c);
  const neck = GUIDE.padReach;
  const head = headOf(c);
  const stop = stopAt(c, head);
  const [topX, topZ] = onHandle(0, STICK.handle);
  const corners: [Vec2, number][] = [
    [[neck, 0], 0],
    [[STICK.heel, 0], 3],
    [onHandle(0, 0), 3],
    [onHandle(stop + STICK.grip, 0), 4],
    [onHandle(stop + STICK.grip, STICK.handle), 8],
    [onHandle(stop, STICK.handle), 3],
    [onHandle(stop, STICK.handle + STICK.stop), 0],
    [onHandle(stop - STICK.stopWidth, STICK.handle + STICK.stop), 0],
    [onHandle(stop - STICK.stopWidth - 4, STICK.handle), 3],
    [[topX + head - topZ, head], 2],
    [[neck, head], 3],
    [[neck, height + STICK.nose + 2], 0],
    [[0, height + STICK.nose], 2],
    [[0, height - STICK.nose], 2],
    [[neck, height - STICK.nose - 2], 0],
  ];
  const outline = rounded(
    corners.map(([p]) => p),
    corners.map(([, r]) => r),
  );
  return chain(outline, (outer) =>
    ok({
      kind: 'print',
      id: 'push-stick',
      name: words.names.pushStick,
      quantity: 1,
      material: name,
      density,
      finish: words.finish.print,
      layers: [{ profile: { outer, holes: [] }, from: 0, to: STICK.width }],
      holes: [],
      notes: [
        words.notes.stick(where, c.v.handDistance),
        words.notes.printSolid,
        words.notes.printAway,
      ],
      tight: [],
    }),
  );
};
