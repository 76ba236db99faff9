import { SIDES, type Side } from '../../blade/schema.ts';
import type { Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { carried, turned as toSide } from '../spine-rest/carry.ts';
import { edgeOf, type Wish } from '../spine-rest/stations.ts';
import type { SequencePass } from '../spine-rest/types.ts';
import {
  faceAngleFor,
  faceIn,
  midplaneAt,
  planeOf,
  type Mounting,
  type Plane,
  type Turned,
} from './mount.ts';
import type { CarriageParameters } from './types.ts';

/** A blade on the carriage with its wishes and the ways it is clamped. */
export interface CarriageJob {
  readonly mount: Mounting;
  readonly wishes: { readonly [side in Side]: Wish | undefined };
  /** Along the straight edge first, then on the falls of the tip. */
  readonly turned: readonly Turned[];
}

/** One blade under one belt on one side, clamped one way. */
export interface CarriageCut {
  readonly job: CarriageJob;
  readonly turned: Turned;
  readonly plane: Plane;
  /** Sections before and after, turned so that the ground side faces the belt. */
  readonly before: readonly Section[];
  readonly after: readonly Section[];
  readonly faces: readonly (Face | undefined)[];
}

/** One belt on one side of the whole family, clamped one way. */
export interface CarriageRun {
  readonly pass: SequencePass;
  readonly step: number;
  readonly side: Side;
  readonly facet: number;
  readonly last: boolean;
  /** At the bevel place of the first blade, and between upright and belt, degrees. */
  readonly angle: number;
  readonly faceAngle: number;
  readonly cornerForward: number;
  readonly cuts: readonly CarriageCut[];
}

/** Sections of every blade, stored as they are. */
export type States = readonly (readonly Section[])[];

/** The faces of one plane at every station that the stroke brings to the belt. */
const facesOf = (
  { work, places }: Mounting,
  plane: Plane,
  plungeStop: number,
): (Face | undefined)[] =>
  work.stations.map(({ u }, i) => {
    const place = places[i];
    return place === undefined || u < plungeStop - 1e-9 ? undefined : faceIn(plane, place);
  });

/** Angle between upright and belt for a pass on a side, and the corner it asks for. */
const aimOf = (
  { mount, turned, wishes }: CarriageJob,
  pass: SequencePass,
  side: Side,
  forward: number,
): Pick<CarriageRun, 'angle' | 'faceAngle' | 'cornerForward'> | undefined => {
  const { work, places } = mount;
  const [station, place] = [work.stations[work.reference], places[work.reference]];
  const [wish, main] = [wishes[side], turned[0]];
  if (station === undefined || place === undefined || wish === undefined || main === undefined)
    return undefined;
  const angle = wish.angle + pass.steeper;
  return {
    angle,
    faceAngle: faceAngleFor(mount, main, place, angle),
    cornerForward: forward + midplaneAt(mount, main.at[0]) + edgeOf(work, station, side, pass.edge),
  };
};

/**
 * Grinds the family in thought, from the sections given: each belt in turn, left then right, first along the straight edge
 * and then on the falls of the tip, every section carried on to what comes after. Angle and fence
 * are those of the first blade that is ground on the side; the others get what these leave them.
 */
export const runCarriage = (
  start: States,
  jobs: readonly CarriageJob[],
  sequence: readonly SequencePass[],
  { forward, plungeStop }: CarriageParameters,
): CarriageRun[] => {
  let states = start;
  const facets = Math.max(1, ...jobs.map(({ turned }) => turned.length));
  return sequence.flatMap((pass, index) =>
    SIDES.flatMap((side) => {
      const first = jobs.find(({ wishes }) => wishes[side] !== undefined);
      const aim = first && aimOf(first, pass, side, forward);
      if (aim === undefined) return [];
      return Array.from({ length: facets }, (_, facet): CarriageRun => {
        const cuts = jobs.flatMap((job, i): CarriageCut[] => {
          const turned = job.turned[facet];
          const stored = states[i];
          if (job.wishes[side] === undefined || turned === undefined || stored === undefined)
            return [];
          const edge = aim.cornerForward - forward - midplaneAt(job.mount, turned.at[0]);
          const plane = planeOf(job.mount, turned, edge, aim.faceAngle);
          const faces = facesOf(job.mount, plane, plungeStop);
          const before = toSide(stored, side);
          const after = carried(before, faces);
          const next = toSide(after, side);
          states = states.map((sections, k) => (k === i ? next : sections));
          return [{ job, turned, plane, before, after, faces }];
        });
        const last = index === sequence.length - 1;
        return { pass, step: index + 1, side, facet, last, ...aim, cuts };
      });
    }),
  );
};
