import {
  bodyOf,
  chain,
  clear,
  ok,
  type Asked,
  type Body,
  type PartForms,
  type Result,
  type Workshop,
} from '../../../src/family/index.ts';
import type { Context } from '../parts/context.ts';
import { stickFrame, stickHand } from '../parts/push-stick.ts';
import { shiftMotion, type Movement } from './sweeps.ts';
import { words } from './words.ts';

/** The push stick as it is used: on the step, its nose against the blade near the tip. */
export interface Stick {
  readonly rig: Context;
  /** Height of what it stands on, seat frame, mm. */
  readonly level: number;
  /** Where its nose stands along y at a setting, nearest the belt over the stroke, mm. */
  readonly noseAt: (setting: string) => number;
  readonly asked: readonly Asked[];
}

interface Wish {
  readonly runningClearance: number;
  readonly handDistance: number;
}

/**
 * What stick and hand must keep clear of; `parts` are the bodies of the fixture beside the step. Of
 * the push block nothing is asked: it is away when the stick is used.
 */
export const stickPairs = (
  { runningClearance, handDistance }: Wish,
  parts: readonly string[],
): Asked[] => {
  const { fix } = words;
  const parameter = 'fixture.parameters.handDistance';
  const blade = ['tang', 'collar'];
  return [
    // As of the pad: the blade itself holds the nose off the belt.
    clear('stick', 'belt', 0.05, fix.stickAway),
    ...['platen', 'wheels', 'guards'].map((b) =>
      clear('stick', b, runningClearance, fix.stickAway),
    ),
    ...[...parts, 'rest', ...blade].map((b) => clear('stick', b, 0.5, fix.stickAway)),
    {
      id: 'contact/stick/step',
      rule: { kind: 'touch', a: 'stick', b: 'step', tolerance: 0.02, apart: [0, 0, 1] },
      fix: fix.stickAway,
    },
    ...['belt', 'wheels', 'platen'].map((b) =>
      clear('handOnStick', b, handDistance, fix.stick, parameter),
    ),
    ...[...parts, 'step', 'rest', 'guards'].map((b) => clear('handOnStick', b, 1, fix.stickAway)),
    ...['blade', ...blade].map((b) => clear('handOnStick', b, 5, fix.stickAway)),
  ];
};

/** Stick and hand over movements of the blade. */
export const stickBodies = (
  { rig, level, noseAt }: Stick,
  forms: PartForms,
  movements: readonly Movement[],
  workshop: Workshop,
): Result<Body[]> => {
  const motion = shiftMotion(movements, noseAt);
  const stick = {
    part: 'push-stick',
    name: 'push-stick',
    frame: stickFrame(0, level),
    carrier: 'hand',
    touches: [],
  } as const;
  const { frame, size } = stickHand(rig);
  const [x, y, z] = frame.origin;
  const box = { kind: 'box', frame: { ...frame, origin: [x, y, z + level] }, size } as const;
  return chain(bodyOf('stick', [stick], forms, motion), (held) =>
    chain(workshop.prepared('handOnStick', box), (solid) =>
      ok([held, { name: 'handOnStick', solids: [solid], chordError: 0, motion }]),
    ),
  );
};
