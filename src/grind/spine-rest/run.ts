import { ground } from '../section/ground.ts';
import type { Side } from '../../blade/schema.ts';
import type { Section } from '../section/section.ts';
import { setoffAtPlace, setoffOfLeastDeviation, type Aimed } from './aim.ts';
import { carried, facing } from './carry.ts';
import { facesAt, type PlaceFace } from './faces.ts';
import { edgeOf, type Bladework, type Wish } from './stations.ts';
import type { SequencePass, SpineRestParameters } from './types.ts';
import type { Stroke } from './windows.ts';

/** A blade with its wishes and stroke. */
export interface Job {
  readonly work: Bladework;
  readonly wishes: { readonly [side in Side]: Wish | undefined };
  readonly stroke: Stroke;
}

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

export const SIDES: readonly Side[] = ['left', 'right'];

const aimed = (
  jobs: readonly Job[],
  states: readonly (readonly Section[])[],
  side: Side,
): Aimed[] =>
  jobs.flatMap(({ work, wishes, stroke }, i) => {
    const wanted = wishes[side];
    const sections = states[i];
    if (wanted === undefined || sections === undefined) return [];
    return [{ work, wanted, stroke, sections: sections.map((s) => facing(s, side)) }];
  });

/** Setoffs closer than this to the wish at the bevel place are that wish, mm. */
const SAME = 1e-4;

/** The setoff that the last belt needs on a side, by the parameters' aim. */
const lastSetoff = (
  family: readonly Aimed[],
  question: { readonly side: Side; readonly edge: number; readonly lean: number },
  aim: SpineRestParameters['aim'],
): number => {
  const [first] = family;
  if (first === undefined) return NaN;
  const atPlace = setoffAtPlace(first, question);
  if (aim === 'place') return atPlace;
  const least = setoffOfLeastDeviation(family, question);
  return Math.abs(least - atPlace) < SAME ? atPlace : least;
};

/**
 * The blades as they come to the rest: at `asHeatTreated` thick behind the edge, their bevels
 * taken to lie parallel to the finished ones (an estimate; it bears on the first belts' volume and
 * first contact, not on a finished line). An edge as thick as the stock is an unground bar.
 */
const asTheyCome = (
  { work }: Job,
  finished: { readonly [side in Side]?: readonly (PlaceFace | undefined)[] },
): Section[] =>
  work.stations.map((station, i) =>
    SIDES.reduce((section, side) => {
      const own = finished[side]?.[i]?.own;
      const edge = edgeOf(work, station, side, work.blade.edge.asHeatTreated);
      if (own === undefined || edge >= station.thickness / 2) return section;
      return facing(ground(facing(section, side), { edge, angle: own.angle }), side);
    }, station.bar),
  );

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
  const bars = jobs.map(({ work }) => work.stations.map(({ bar }) => bar));
  const edge = sequence.at(-1)?.edge ?? 0;
  // What the finished sides look like on bars, for the earlier belts and the blades as they come.
  const preview = SIDES.map((side) => {
    const family = aimed(jobs, bars, side);
    const setoff = lastSetoff(family, { side, edge, lean }, aim);
    const faces = jobs.map(({ work, stroke }) =>
      facesAt(work, bars[jobs.findIndex((job) => job.work === work)] ?? [], {
        side,
        edge,
        setoff,
        lean,
        stroke,
      }),
    );
    const [first] = family;
    const own = jobs.findIndex((job) => job.work === first?.work);
    return { side, faces, angle: faces[own]?.[first?.work.reference ?? 0]?.own.angle ?? NaN };
  });
  const finishedOf = (i: number) =>
    Object.fromEntries(
      preview.flatMap(({ side, faces }) =>
        jobs[i]?.wishes[side] === undefined ? [] : [[side, faces[i]]],
      ),
    );
  let states = jobs.map((job, i) => asTheyCome(job, finishedOf(i)));
  return sequence.flatMap((pass, index) =>
    preview.flatMap(({ side, angle }): Run[] => {
      const last = index === sequence.length - 1;
      const family = aimed(jobs, states, side);
      const [first] = family;
      if (first === undefined) return [];
      const question = { side, edge: pass.edge, lean };
      const setoff = last
        ? lastSetoff(family, question, aim)
        : setoffAtPlace(first, question, angle + pass.steeper);
      const cuts = jobs.flatMap((job, i): Cut[] => {
        if (job.wishes[side] === undefined) return [];
        const before = (states[i] ?? []).map((section) => facing(section, side));
        const faces = facesAt(job.work, before, { ...question, setoff, stroke: job.stroke });
        const reached = faces.map((face) => face?.reached);
        const after = carried(states[i] ?? [], side, reached);
        states = states.map((state, k) => (k === i ? after : state));
        return [{ job, before, after: after.map((section) => facing(section, side)), faces }];
      });
      return [{ pass, step: index + 1, side, last, setoff, cuts }];
    }),
  );
};
