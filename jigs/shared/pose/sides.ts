import type { Frame } from '../../../src/family/index.ts';

/** How the other side of a blade that is the same on both stands, its ground side to the belt. */
export const mirrored = ({ origin, x, y, z }: Frame): Frame => ({
  origin: [-origin[0], origin[1], origin[2]],
  x: [-x[0], x[1], x[2]],
  y: [-y[0], y[1], y[2]],
  z: [z[0], -z[1], -z[2]],
});

/** Places along a stop, tilts and loads nearer than this are the same, mm and degrees. */
const SAME = 1e-12;

/** A blade settled at one place by how it stands there: what is asked for again is found again. */
export type Settled = (
  how: readonly number[],
  settle: () => Frame | undefined,
) => Frame | undefined;

/** Settles at a place once for every way to stand: a blade turned over often stands alike. */
export const settledOnce = (): Settled => {
  const known: { readonly how: readonly number[]; readonly frame: Frame | undefined }[] = [];
  return (how, settle) => {
    const isSame = (one: readonly number[]): boolean =>
      one.every((value, k) => Math.abs(value - (how[k] ?? NaN)) <= SAME);
    const last = known.find((one) => isSame(one.how));
    if (last) return last.frame;
    const frame = settle();
    known.push({ how, frame });
    return frame;
  };
};
