import { edgeOffsetsOn } from '../blade/bevel.ts';
import type { Side } from '../blade/schema.ts';
import type { Shape } from '../blade/shape.ts';
import { withFace, type Field } from './field.ts';
import { volumeOf } from './measure/volume.ts';
import type { PassResult, VirtualPass } from './types.ts';

/** A pass, and the blade as it came to it. */
export interface Made {
  readonly before: Field;
  readonly result: PassResult;
}

export const other = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** All that a pass is but its side: in a pass u runs along the stroke whichever side is ground. */
const settingOf = ({ holding, surface, edge, stroke }: VirtualPass): string =>
  JSON.stringify([holding, surface, edge, stroke]);

const same = (a: ArrayLike<number>, b: ArrayLike<number>): boolean => {
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i]) return false;
  return a.length === b.length;
};

/** Whether two faces are alike in the rows of each column up to one. */
const alikeTo = (row: number, { us, rows }: Field, a: Float64Array, b: Float64Array): boolean => {
  for (let i = 0; i < us.length; i += 1)
    for (let k = i * rows; k <= i * rows + row; k += 1) if (a[k] !== b[k]) return false;
  return true;
};

/** Whether a face lies off the blade's other one everywhere: no cut was stopped by that. */
const clears = (face: Float64Array, far: Float64Array): boolean =>
  face.every((w, k) => w > -(far[k] as number));

/**
 * What a pass does that meets a blade as an earlier pass met its other side, from what that one did:
 * the same setting, the same face to the belt, the same stops, and of the face at the step the same
 * as far as it was looked at. The poses are those of the earlier pass then, and so is the face they
 * leave as long as it lies off the other one. Undefined where there is no such pass.
 */
export const mirrored = (
  made: readonly Made[],
  shape: Shape,
  before: Field,
  pass: VirtualPass,
): PassResult | undefined => {
  const { side, edge } = pass;
  const [near, far] = [before[side], before[other(side)]];
  const alike = made.find(({ before: came, result: { pass: was, ...did } }) => {
    if (was.side === side || settingOf(was) !== settingOf(pass)) return false;
    const poses = [...did.before, ...did.reached];
    // Where a blade could not stand, what was looked at is not known.
    if (did.missed.length > 0 || poses.some(({ stands }) => stands === undefined)) return false;
    const row = Math.max(...poses.map(({ stands }) => stands?.row ?? Infinity));
    const [itsNear, itsFar] = [came[was.side], came[side]];
    const face = did.after[was.side];
    const stops = before.us.map((u) => edgeOffsetsOn(shape, u, edge)[side]);
    const itsStops = came.us.map((u) => edgeOffsetsOn(shape, u, edge)[was.side]);
    return (
      same(before.us, came.us) &&
      same(before.v, came.v) &&
      same(near, itsNear) &&
      same(stops, itsStops) &&
      alikeTo(row, before, far, itsFar) &&
      clears(face, itsFar) &&
      clears(face, far)
    );
  });
  if (alike === undefined) return undefined;
  const { result } = alike;
  const after = withFace(before, side, result.after[other(side)]);
  return { ...result, pass, after, volume: volumeOf(before) - volumeOf(after) };
};
