import type { Side } from '../../blade/schema.ts';
import type { Section } from '../section/section.ts';
import { setoffAtPlace, setoffOfLeastDeviation, type Aimed } from './aim.ts';
import { asItComes, carried, turned } from './carry.ts';

import { facesAt, placedAt, type PlaceFace, type Question } from './faces.ts';
import { type Bladework, type Wish } from './stations.ts';
import type { SpineRestParameters } from './types.ts';
import type { Stroke, Window } from './windows.ts';

/** A blade with its wishes and stroke. */
export interface Job {
  readonly work: Bladework;
  readonly wishes: { readonly [side in Side]: Wish | undefined };
  readonly stroke: Stroke;
  /** Stations that this stroke brings under the belt together. */
  readonly windows: readonly Window[];
}

/** What a setting is asked for, whatever its setoff. */
export type Asked = Omit<Question, 'setoff'>;

/** The sections of every blade of the family as they are now. */
export type States = readonly (readonly Section[])[];

/** All blades turned so that `side` faces the belt, or turned back. */
export const turnedAll = (states: States, side: Side): States =>
  states.map((sections) => turned(sections, side));

/** All blades with the side that faces the belt ground to the faces they reach. */
export const carriedAll = (
  states: States,
  faces: readonly (readonly (PlaceFace | undefined)[])[],
): States =>
  states.map((sections, i) =>
    carried(
      sections,
      (faces[i] ?? []).map((face) => face?.reached),
    ),
  );

/** The blades that are ground on a side, ready to be aimed at; `states` with that side to the belt. */
export const aimed = (jobs: readonly Job[], states: States, side: Side): Aimed[] =>
  jobs.flatMap(({ work, wishes, stroke }, i) => {
    const [wanted, sections] = [wishes[side], states[i]];
    return wanted === undefined || sections === undefined
      ? []
      : [{ work, wanted, stroke, sections }];
  });

/** Setoffs closer than this to the wish at the bevel place are that wish, mm. */
const SAME = 1e-4;

/** The setoff that the last belt needs on a side, by the parameters' aim. */
export const lastSetoff = (
  family: readonly Aimed[],
  question: Asked,
  aim: SpineRestParameters['aim'],
): number => {
  const [first] = family;
  if (first === undefined) return NaN;
  const atPlace = setoffAtPlace(first, question);
  if (aim === 'place') return atPlace;
  const least = setoffOfLeastDeviation(family, question);
  return Math.abs(least - atPlace) < SAME ? atPlace : least;
};

/** One side as it will be finished. */
export interface Preview {
  readonly side: Side;
  /** At the bevel place of the first blade ground on this side, degrees. */
  readonly angle: number;
  /** By blade and station. */
  readonly faces: readonly (readonly (PlaceFace | undefined)[])[];
}

/**
 * The faces one setoff grinds on every blade of the family that has a wish for the side; `states`
 * with that side to the belt.
 */
export const familyFaces = (
  jobs: readonly Job[],
  states: States,
  question: Asked & { readonly setoff: number },
): (readonly (PlaceFace | undefined)[])[] =>
  jobs.map(({ work, wishes, windows }, i) => {
    if (wishes[question.side] === undefined) return [];
    return facesAt(placedAt(work, states[i] ?? [], question), windows, question);
  });

const finish = (
  jobs: readonly Job[],
  bars: States,
  question: Asked,
  aim: SpineRestParameters['aim'],
): Preview => {
  const { side } = question;
  const states = turnedAll(bars, side);
  const family = aimed(jobs, states, side);
  const [first] = family;
  if (first === undefined) return { side, angle: NaN, faces: [] };
  const setoff = lastSetoff(family, question, aim);
  const faces = familyFaces(jobs, states, { ...question, setoff });
  const own = jobs.findIndex(({ work }) => work === first.work);
  return { side, faces, angle: faces[own]?.[first.work.reference]?.own.angle ?? NaN };
};

/**
 * What the finished sides will look like, for the belts before the last. Each side is finished on
 * bars that have the other side's finish, which counts where that takes the corner at the step.
 */
export const previews = (
  jobs: readonly Job[],
  edge: number,
  lean: number,
  aim: SpineRestParameters['aim'],
): readonly Preview[] => {
  const bars = jobs.map(({ work }) => work.stations.map(({ bar }) => bar));
  const after = ({ side, faces }: Preview): States =>
    turnedAll(carriedAll(turnedAll(bars, side), faces), side);
  const asked = (side: Side): Asked => ({ side, edge, lean });
  const first = finish(jobs, bars, asked('left'), aim);
  const right = finish(jobs, after(first), asked('right'), aim);
  return [finish(jobs, after(right), asked('left'), aim), right];
};

/**
 * The blades as they come to the rest: at `asHeatTreated` thick behind the edge, their bevels
 * taken to lie parallel to the finished ones (an estimate; it bears on the first belts' volume and
 * first contact, not on a finished line).
 */
export const asTheyCome = (jobs: readonly Job[], finished: readonly Preview[]): States =>
  jobs.map(({ work }, k) =>
    work.stations.map((station, i) =>
      asItComes(
        work,
        station,
        (side) => finished.find((one) => one.side === side)?.faces[k]?.[i]?.own.angle,
      ),
    ),
  );
