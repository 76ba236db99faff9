import type { Side } from '../../blade/schema.ts';
import type { Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { angleFor, reachable, type Span } from './angle.ts';
import { edgeAt } from './edge-at.ts';
import { edgeOf, type Bladework } from './stations.ts';
import { reachedAngles, type Stroke } from './windows.ts';

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
  readonly stroke: Stroke;
}

/** What each place can do at all, at any setoff. */
export const spansOf = (
  work: Bladework,
  sections: readonly Section[],
  { side, edge, lean }: Omit<Question, 'setoff' | 'stroke'>,
): (Span | undefined)[] =>
  work.stations.map((station, i) => {
    const section = sections[i];
    return section && reachable(section, edgeOf(work, station, side, edge), lean);
  });

/**
 * The faces that one setoff grinds along a blade, `sections` being its stations as they are now,
 * turned so that the side faces the belt, and `spans` what they can do at all. Undefined at places
 * this setoff cannot reach.
 */
export const facesAt = (
  work: Bladework,
  sections: readonly Section[],
  { side, edge, setoff, lean, stroke }: Question,
  spans: readonly (Span | undefined)[] = spansOf(work, sections, { side, edge, lean }),
): (PlaceFace | undefined)[] => {
  const own = work.stations.map((station, i): Face | undefined => {
    const section = sections[i];
    const span = spans[i];
    if (section === undefined || span === undefined) return undefined;
    const e = edgeOf(work, station, side, edge);
    const angle = angleFor(section, e, setoff, lean, span);
    return angle === undefined ? undefined : { edge: e, angle };
  });
  const reached = reachedAngles(
    work.stations.map(({ u }, i) => ({ u, angle: own[i]?.angle ?? Infinity })),
    stroke,
  );
  return own.map((face, i) => {
    const [section, angle] = [sections[i], reached[i]];
    if (face === undefined || section === undefined || angle === undefined) return undefined;
    if (angle >= face.angle) return { own: face, reached: face };
    if (angle === -Infinity) return undefined;
    return { own: face, reached: { angle, edge: edgeAt(section, angle, setoff, lean) } };
  });
};
