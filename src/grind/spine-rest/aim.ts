import { tan } from '../../core/trigonometry.ts';
import { wantedHeightAt } from '../../blade/bevel.ts';
import { radians } from '../../core/units.ts';
import { minimise } from '../numeric/minimise.ts';
import type { Section } from '../section/section.ts';
import { facesAt, placedAt, type Placed, type Question } from './faces.ts';
import { setoffFor } from './settle.ts';
import { edgeOf, type Bladework, type Wish } from './stations.ts';
import { windowsOf, type Stroke, type Window } from './windows.ts';

/** A blade, its stations as they are now, and what is wanted of the side. */
export interface Aimed {
  readonly work: Bladework;
  readonly sections: readonly Section[];
  readonly wanted: Wish;
  readonly stroke: Stroke;
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

/** What a search over setoffs looks at on one blade. */
interface Looked {
  readonly places: readonly {
    readonly placed: Placed | undefined;
    /** Half the thickness of the blank, and the height aimed at, mm. */
    readonly half: number;
    readonly aim: number;
  }[];
  readonly windows: readonly Window[];
}

const lookedAt = (whole: Aimed, question: Omit<Question, 'setoff'>): Looked => {
  const aimed = coarse(whole);
  const { stations } = aimed.work;
  const placed = placedAt(aimed.work, aimed.sections, question);
  return {
    places: stations.map(({ height, thickness }, i) => ({
      placed: placed[i],
      half: thickness / 2,
      aim: aimAt(aimed, height),
    })),
    windows: windowsOf(
      stations.map(({ u }) => u),
      aimed.stroke,
    ),
  };
};

/**
 * Greatest deviation of a grind line from the wanted one at a setoff, mm. The height of a bevel is
 * taken on its plane and the flank's, (T/2 - e) / tan a, also beyond the spine, so that a bevel
 * more than full still counts as too flat.
 */
const deviation = ({ places, windows }: Looked, setoff: number, lean: number): number => {
  const faces = facesAt(
    places.map(({ placed }) => placed),
    windows,
    { setoff, lean },
  );
  return places.reduce((most, { half, aim }, i) => {
    const face = faces[i]?.reached;
    if (face === undefined) return OUT_OF_REACH;
    return Math.max(most, Math.abs((half - face.edge) / tan(radians(face.angle)) - aim));
  }, 0);
};

/** The setoff that meets the wish of one blade exactly at its bevel place. */
export const setoffAtPlace = (
  { work, sections, wanted }: Aimed,
  { side, edge, lean }: Omit<Question, 'setoff'>,
  angle: number = wanted.angle,
): number => {
  const [station, section] = [work.stations[work.reference], sections[work.reference]];
  if (station === undefined || section === undefined) return NaN;
  return setoffFor(section, { edge: edgeOf(work, station, side, edge), angle }, lean);
};

/** The setoff of least deviation over a family of blades: the greatest deviation is made least. */
export const setoffOfLeastDeviation = (
  family: readonly Aimed[],
  question: Omit<Question, 'setoff'>,
): number => {
  const looked = family.map((aimed) => lookedAt(aimed, question));
  const ends = family.flatMap((aimed) =>
    [AROUND.from, AROUND.to].map((share) =>
      setoffAtPlace(aimed, question, share * aimed.wanted.angle),
    ),
  );
  const worst = (setoff: number): number =>
    Math.max(...looked.map((blade) => deviation(blade, setoff, question.lean)));
  return minimise(worst, Math.min(...ends), Math.max(...ends), CLOSE);
};
