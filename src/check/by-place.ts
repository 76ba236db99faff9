import { isSameFrame, type Frame } from '../geometry/frame.ts';

/** Values by where something stands, each made when it is asked for and not kept. */
export type ByPlace<T> = (frame: Frame, make: () => T) => T;

/**
 * Keeps the latest `limit` values. Places are compared number by number, the latest first: a drag
 * asks for a few of them over and over, and writing twelve numbers out as a key takes longer.
 */
export const createByPlace = <T>(limit: number): ByPlace<T> => {
  const kept: { readonly frame: Frame; readonly value: T }[] = [];
  let next = 0;
  return (frame, make) => {
    for (let back = 1; back <= kept.length; back++) {
      const one = kept[(next - back + limit) % limit];
      if (one && isSameFrame(one.frame, frame)) return one.value;
    }
    const value = make();
    kept[next] = { frame, value };
    next = (next + 1) % limit;
    return value;
  };
};
