import { grindLine, ground } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { angleFor } from './angle.ts';

/** What is ground when the edge has come down to `edge`, at a setoff that stays as it is. */
export interface Progress {
  /** Belt-side edge from the midplane, mm. */
  readonly edge: number;
  readonly angle: number;
  readonly bevelHeight: number;
  /** Bevel height gained for each mm the edge loses on this side: -db/de, mm/mm. */
  readonly gain: number;
}

/** Half step of the central difference, mm. */
const STEP = 1e-5;

/**
 * The step locates the spine and nothing stops the cut: at one setoff the blade leans further as
 * its edge recedes, so angle and bevel height grow together. Edges whose setoff is out of reach
 * (the belt does not touch the blade yet) are left out. `bar` is the unground section, where earlier
 * faces are on the section already.
 */
export const progress = (
  section: Section,
  setoff: number,
  lean: number,
  edges: readonly number[],
  bar: Section = section,
): Progress[] => {
  const heightAt = (edge: number): number | undefined => {
    const angle = angleFor(section, edge, setoff, lean);
    return angle === undefined ? undefined : grindLine(ground(section, { edge, angle }), bar);
  };
  return edges.flatMap((edge) => {
    const angle = angleFor(section, edge, setoff, lean);
    const [less, more] = [heightAt(edge - STEP), heightAt(edge + STEP)];
    if (angle === undefined || less === undefined || more === undefined) return [];
    return [
      {
        edge,
        angle,
        bevelHeight: grindLine(ground(section, { edge, angle }), bar),
        gain: Math.max(0, (less - more) / (2 * STEP)),
      },
    ];
  });
};
