import {
  chain,
  ok,
  rounded,
  type PrintPart,
  type Result,
  type Vec2,
} from '../../../src/family/index.ts';
import { printed, words, type Context } from './context.ts';

/** Proportions of the stick, mm: width, half height of its nose, handle, and its stop. */
const STICK = { width: 16, nose: 3, neck: 8, heel: 30, handle: 22, grip: 100, stop: 18 } as const;

/** Behind this distance from the nose of the stick the hand is held, mm. */
export const stickStop = (c: Context): number => Math.max(c.v.handDistance, STICK.heel + 10);

/**
 * The push stick for the last of the tip, where the block is too wide: profile in y (from its
 * nose towards the hand) and z (from the step's top). It stands on the step, so its nose has the
 * height of the lowest pad; a stop keeps the hand behind it.
 */
export const pushStick = (c: Context): Result<PrintPart> => {
  const { footHeight, pads, pad } = c.l.push;
  const { name, density } = printed(c);
  const height = Math.min(pad, ...pads);
  const [low, top] = [footHeight, footHeight + STICK.handle];
  const stop = stickStop(c);
  const head = Math.max(height + STICK.neck, top);
  const corners: [Vec2, number][] = [
    [[STICK.neck, 0], 0],
    [[STICK.heel, 0], 3],
    [[STICK.heel, low], 3],
    [[stop + STICK.grip, low], 4],
    [[stop + STICK.grip, top], 8],
    [[stop, top], 3],
    [[stop, top + STICK.stop], 0],
    [[stop - 6, top + STICK.stop], 0],
    [[stop - 10, top], 3],
    ...(head > top
      ? ([
          [[STICK.heel, top], 4],
          [[STICK.neck + 8, head], 4],
        ] as [Vec2, number][])
      : []),
    [[STICK.neck, head], 3],
    [[STICK.neck, height + STICK.nose + 2], 0],
    [[0, height + STICK.nose], 2],
    [[0, height - STICK.nose], 2],
    [[STICK.neck, height - STICK.nose - 2], 0],
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
      notes: [words.notes.stick(stop), words.notes.printSolid, words.notes.printAway],
      tight: [],
    }),
  );
};
