import { fail, ok, type Result } from '../core/result.ts';
import type { Profile } from '../geometry/loop.ts';
import { offset } from '../geometry/offset.ts';

/**
 * What the middle of the beam must follow so that the part comes out as drawn: the outer contour
 * grown and the holes shrunk by half the kerf (mm, 0 or more), so that outer sizes grow and holes
 * shrink by exactly the kerf. Fails when a feature is too small for it.
 */
export const kerfed = ({ outer, holes }: Profile, kerf: number): Result<Profile> => {
  const grown = offset(outer, kerf / 2);
  const shrunk = holes.map((hole) => offset(hole, -kerf / 2));
  const issues = [grown, ...shrunk].flatMap((result) => result.issues);
  const inner = shrunk.flatMap((result) => (result.ok ? [result.value] : []));
  return grown.ok && inner.length === holes.length
    ? ok({ outer: grown.value, holes: inner }, issues)
    : fail(...issues);
};
