import type { Side } from '../../blade/schema.ts';
import type { Section } from '../section/section.ts';
import { setoffAtPlace } from './aim.ts';
import type { PlaceFace } from './faces.ts';
import {
  aimed,
  asTheyCome,
  carriedAll,
  familyFaces,
  lastSetoff,
  previews,
  turnedAll,
  type Job,
} from './preview.ts';
import type { SequencePass, SpineRestParameters } from './types.ts';

/** One blade under one belt on one side. */
export interface Cut {
  readonly job: Job;
  /** Sections before and after, turned so that the ground side faces the belt. */
  readonly before: readonly Section[];
  readonly after: readonly Section[];
  readonly faces: readonly (PlaceFace | undefined)[];
}

/** One belt on one side of the whole family. */
export interface Run {
  readonly pass: SequencePass;
  /** From 1. */
  readonly step: number;
  readonly side: Side;
  readonly last: boolean;
  readonly setoff: number;
  readonly cuts: readonly Cut[];
}

/**
 * Grinds the family in thought: each belt in turn, left then right, every section carried on to
 * what comes after. Earlier belts are set `steeper` than the finished angle at the bevel place of
 * the first blade, for their own edge; the last belt is set by the wish.
 */
export const runSequence = (
  jobs: readonly Job[],
  sequence: readonly SequencePass[],
  lean: number,
  aim: SpineRestParameters['aim'],
): Run[] => {
  const finished = previews(jobs, sequence.at(-1)?.edge ?? 0, lean, aim);
  let states = asTheyCome(jobs, finished);
  return sequence.flatMap((pass, index) =>
    finished.flatMap(({ side, angle }): Run[] => {
      const last = index === sequence.length - 1;
      const before = turnedAll(states, side);
      const family = aimed(jobs, before, side);
      const [first] = family;
      if (first === undefined) return [];
      const question = { side, edge: pass.edge, lean };
      const setoff = last
        ? lastSetoff(family, question, aim)
        : setoffAtPlace(first, question, angle + pass.steeper);
      const faces = familyFaces(jobs, before, { ...question, setoff });
      const after = carriedAll(before, faces);
      states = turnedAll(after, side);
      const cuts = jobs.flatMap((job, i) =>
        job.wishes[side] === undefined
          ? []
          : [{ job, before: before[i] ?? [], after: after[i] ?? [], faces: faces[i] ?? [] }],
      );
      return [{ pass, step: index + 1, side, last, setoff, cuts }];
    }),
  );
};
