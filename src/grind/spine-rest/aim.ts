import { wantedHeightAt } from '../../blade/bevel.ts';
import { radians } from '../../core/units.ts';
import { minimise } from '../numeric/minimise.ts';
import type { Section } from '../section/section.ts';
import type { Span } from './angle.ts';
import { facesAt, spansOf, type Question } from './faces.ts';
import { setoffFor } from './settle.ts';
import { edgeOf, type Bladework, type Wish } from './stations.ts';

/** A blade, its stations as they are now, and what is wanted of the side. */
export interface Aimed {
  readonly work: Bladework;
  readonly sections: readonly Section[];
  readonly wanted: Wish;
  readonly stroke: Question['stroke'];
}

/** Every how many stations the search looks; the answer is reported at all of them. */
const COARSE = 3;

/** Angles around the wish among which the setoff is looked for, as shares of it. */
const AROUND = { from: 0.4, to: 2.2 } as const;

/** How close to the least deviation the setoff is found, mm. */
const CLOSE = 1e-5;

/** A bevel counts as more than full beyond this, mm. */
const MORE = 1e-9;

/** Deviation that stands for a place the setoff cannot reach, mm. */
const OUT_OF_REACH = 1e3;

/** Some of the places that steer and that the stroke brings to the belt. */
const coarse = ({ work, sections, wanted, stroke }: Aimed): Aimed => {
  const first = stroke.from - stroke.width / 2;
  const keep = work.stations.map(
    ({ u, steers }, i) => steers && u >= first && (i % COARSE === 0 || i === work.tip),
  );
  return {
    wanted,
    stroke,
    sections: sections.filter((_, i) => keep[i]),
    work: { ...work, stations: work.stations.filter((_, i) => keep[i]) },
  };
};

/**
 * The height aimed at on the planes of face and flank. A wished angle that is more than full height
 * aims beyond the spine, in proportion to the height.
 */
const aimAt = ({ work, wanted }: Aimed, height: number): number =>
  wanted.whole > wanted.bevelHeight + MORE
    ? (wanted.whole / wanted.height) * height
    : wantedHeightAt(work.blade.line.follow, wanted, height);

/**
 * Greatest deviation of a grind line from the wanted one at a setoff, mm. The height of a bevel is
 * taken on its plane and the flank's, (T/2 - e) / tan a, also beyond the spine, so that a bevel
 * more than full still counts as too flat.
 */
const deviation = (
  aimed: Aimed,
  spans: readonly (Span | undefined)[],
  question: Omit<Question, 'stroke'>,
): number => {
  const { work, sections, stroke } = aimed;
  const faces = facesAt(work, sections, { ...question, stroke }, spans);
  return work.stations.reduce((most, { thickness, height }, i) => {
    const face = faces[i]?.reached;
    if (face === undefined) return OUT_OF_REACH;
    const bevel = (thickness / 2 - face.edge) / Math.tan(radians(face.angle));
    return Math.max(most, Math.abs(bevel - aimAt(aimed, height)));
  }, 0);
};

/** The setoff that meets the wish of one blade exactly at its bevel place. */
export const setoffAtPlace = (
  { work, sections, wanted }: Aimed,
  { side, edge, lean }: Omit<Question, 'setoff' | 'stroke'>,
  angle: number = wanted.angle,
): number => {
  const [station, section] = [work.stations[work.reference], sections[work.reference]];
  if (station === undefined || section === undefined) return NaN;
  return setoffFor(section, { edge: edgeOf(work, station, side, edge), angle }, lean);
};

/** The setoff of least deviation over a family of blades: the greatest deviation is made least. */
export const setoffOfLeastDeviation = (
  family: readonly Aimed[],
  question: Omit<Question, 'setoff' | 'stroke'>,
): number => {
  const looked = family.map((whole) => {
    const aimed = coarse(whole);
    return { aimed, spans: spansOf(aimed.work, aimed.sections, question) };
  });
  const ends = family.flatMap((aimed) =>
    [AROUND.from, AROUND.to].map((share) =>
      setoffAtPlace(aimed, question, share * aimed.wanted.angle),
    ),
  );
  const worst = (setoff: number): number =>
    Math.max(...looked.map(({ aimed, spans }) => deviation(aimed, spans, { ...question, setoff })));
  return minimise(worst, Math.min(...ends), Math.max(...ends), CLOSE);
};
