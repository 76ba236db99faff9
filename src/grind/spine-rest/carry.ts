import { SIDES, type Side } from '../../blade/schema.ts';
import { signedArea } from '../../geometry/loop-measure.ts';
import { ground, type Face } from '../section/ground.ts';
import { flipped, type Section } from '../section/section.ts';
import { edgeOf, isBar, type Bladework, type Station } from './stations.ts';

/** The section as the belt sees it when `side` is ground; stored sections have the right there. */
export const facing = (section: Section, side: Side): Section =>
  side === 'left' ? flipped(section) : section;

/** A blade's sections turned so that `side` faces the belt, or turned back. */
export const turned = (sections: readonly Section[], side: Side): readonly Section[] =>
  side === 'left' ? sections.map(flipped) : sections;

/** All sections of a blade with the side that faces the belt ground to the given faces. */
export const carried = (
  sections: readonly Section[],
  faces: readonly (Face | undefined)[],
): readonly Section[] =>
  sections.map((section, i) => {
    const face = faces[i];
    return face === undefined ? section : ground(section, face);
  });

/**
 * A station of a blade as it comes to its fixture: `asHeatTreated` thick behind the edge, the bevels at
 * the angles (degrees) that they are finished at; none for a side that is not ground. An edge as thick as the stock
 * is an unground bar.
 */
export const asItComes = (
  work: Bladework,
  station: Station,
  angleOf: (side: Side) => number | undefined,
): Section =>
  SIDES.reduce((section, side) => {
    const angle = angleOf(side);
    if (angle === undefined || isBar(work, station)) return section;
    const edge = edgeOf(work, station, side, work.blade.edge.asHeatTreated);
    return facing(ground(facing(section, side), { edge, angle }), side);
  }, station.bar);

/** Metal between two states of a blade, mm^3: the areas' difference by the trapezium rule. */
export const volumeBetween = (
  { stations }: Bladework,
  before: readonly Section[],
  after: readonly Section[],
): number => {
  const lost = stations.map((_, i) => {
    const [was, is] = [before[i], after[i]];
    if (was === undefined || is === undefined || was === is) return 0;
    return signedArea(was.outline) - signedArea(is.outline);
  });
  return stations.reduce((sum, { u }, i) => {
    const [next, here, there] = [stations[i + 1], lost[i] ?? 0, lost[i + 1] ?? 0];
    return next === undefined ? sum : sum + ((here + there) / 2) * (next.u - u);
  }, 0);
};

/** The belt side's edge of a section, from the midplane, mm. */
export const edgeNow = ({ height, outline }: Section): number =>
  -Math.min(...outline.vertices.filter(({ y }) => y > height - 1e-9).map(({ x }) => x));
