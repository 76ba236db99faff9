import type { Side } from '../../blade/schema.ts';
import type { Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { angleFor, reachable, type Span } from './angle.ts';
import { edgeAt } from './edge-at.ts';
import { edgeOf, type Bladework } from './stations.ts';
import { reachedAngles, type Window } from './windows.ts';

/** What one setting does at one place. */
export interface PlaceFace {
  /** The face of the section on its own, its edge ground to the stop. */
  readonly own: Face;
  /** The face that is really reached under a belt of finite width. */
  readonly reached: Face;
}

/** What is asked of a blade at one setting. */
export interface Question {
  readonly side: Side;
  /** Edge thickness to stop at, both sides together, mm. */
  readonly edge: number;
  readonly setoff: number;
  readonly lean: number;
}

/** A place as it is now, turned so that the side faces the belt, and what it can do at any setoff. */
export interface Placed {
  readonly section: Section;
  /** The edge to stop at on this side, from the midplane, mm. */
  readonly edge: number;
  readonly span: Span | undefined;
}

/** The places of a blade, ready to be asked at many setoffs; `sections` are its stations. */
export const placedAt = (
  work: Bladework,
  sections: readonly Section[],
  { side, edge, lean }: Omit<Question, 'setoff'>,
): (Placed | undefined)[] =>
  work.stations.map((station, i) => {
    const section = sections[i];
    if (section === undefined) return undefined;
    const own = edgeOf(work, station, side, edge);
    return { section, edge: own, span: reachable(section, own, lean) };
  });

/**
 * The faces that one setoff grinds along a blade, `windows` being the places the stroke brings
 * under the belt together. Undefined at places this setoff cannot reach.
 */
export const facesAt = (
  places: readonly (Placed | undefined)[],
  windows: readonly Window[],
  { setoff, lean }: Pick<Question, 'setoff' | 'lean'>,
): (PlaceFace | undefined)[] => {
  const angles = places.map((place) =>
    place?.span === undefined
      ? undefined
      : angleFor(place.section, place.edge, setoff, lean, place.span),
  );
  const reached = reachedAngles(
    angles.map((angle) => angle ?? Infinity),
    windows,
  );
  return places.map((place, i): PlaceFace | undefined => {
    const [own, angle] = [angles[i], reached[i]];
    if (place === undefined || own === undefined || angle === undefined) return undefined;
    const face = { edge: place.edge, angle: own };
    if (angle >= own) return { own: face, reached: face };
    if (angle === -Infinity) return undefined;
    return { own: face, reached: { angle, edge: edgeAt(place.section, angle, setoff, lean) } };
  });
};
