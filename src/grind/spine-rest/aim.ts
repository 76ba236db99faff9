import { tan } from '../../core/trigonometry.ts';
import { wantedHeightAt } from '../../blade/bevel.ts';
import { radians } from '../../core/units.ts';
import { minimise } from '../numeric/minimise.ts';
import { root } from '../numeric/root.ts';
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

/** How close to the least deviation a setoff is searched for, mm. */
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

/** How far bevels stand beyond the wanted line and short of it at a setoff, over all places, mm. */
interface Deviation {
  readonly setoff: number;
  readonly beyond: number;
  readonly short: number;
}

/**
 * Greatest deviations of grind lines from the wanted ones at a setoff. The height of a bevel is
 * taken on its plane and the flank's, (T/2 - e) / tan a, also beyond the spine, so that a bevel
 * more than full still counts as too flat. A place out of reach is so on the side it lies on.
 */
const deviationAt = (looked: readonly Looked[], setoff: number, lean: number): Deviation => {
  let beyond = -Infinity;
  let short = -Infinity;
  for (const { places, windows } of looked) {
    const faces = facesAt(
      places.map(({ placed }) => placed),
      windows,
      { setoff, lean },
    );
    places.forEach(({ half, aim, placed }, i) => {
      const face = faces[i]?.reached;
      const over =
        face === undefined ? OUT_OF_REACH : (half - face.edge) / tan(radians(face.angle)) - aim;
      const steep = face === undefined && setoff > (placed?.span?.setoff.to ?? -Infinity);
      beyond = Math.max(beyond, steep ? -over : over);
      short = Math.max(short, steep ? over : -over);
    });
  }
  return { setoff, beyond, short };
};

/** Whether bevels fall and nothing else as the setoff grows, as far as was looked. */
const fall = (seen: readonly Deviation[]): boolean => {
  const inOrder = [...seen].sort((p, q) => p.setoff - q.setoff);
  return inOrder.every(({ beyond, short }, i) => {
    const last = inOrder[i - 1];
    return last === undefined || (beyond <= last.beyond && short >= last.short);
  });
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

/** Deviations of a family of blades by setoff, and the setoffs between which the least is. */
export const deviationsOf = (family: readonly Aimed[], question: Omit<Question, 'setoff'>) => {
  const looked = family.map((aimed) => lookedAt(aimed, question));
  const ends = family.flatMap((aimed) =>
    [AROUND.from, AROUND.to].map((share) =>
      setoffAtPlace(aimed, question, share * aimed.wanted.angle),
    ),
  );
  return {
    at: (setoff: number): Deviation => deviationAt(looked, setoff, question.lean),
    from: Math.min(...ends),
    to: Math.max(...ends),
  };
};

/**
 * The setoff of least deviation over a family of blades: the greatest deviation is made least.
 * Bevels fall as the setoff grows, and with them the most that any stands beyond its line, while
 * the most that any is short of it grows: the greater of both is least where they are even. Where
 * neighbours under the belt hold it off so that a bevel climbs instead, it is searched for.
 */
export const setoffOfLeastDeviation = (
  family: readonly Aimed[],
  question: Omit<Question, 'setoff'>,
): number => {
  const { at, from, to } = deviationsOf(family, question);
  const seen: Deviation[] = [];
  const uneven = (setoff: number): number => {
    const found = at(setoff);
    seen.push(found);
    return found.beyond - found.short;
  };
  const ends = [uneven(from), uneven(to)] as const;
  const even = ends[0] <= 0 ? from : ends[1] >= 0 ? to : root(uneven, from, to, ends);
  if (fall(seen)) return even;
  const worst = (setoff: number): number => {
    const { beyond, short } = at(setoff);
    return Math.max(beyond, short);
  };
  return minimise(worst, from, to, CLOSE);
};
