import { wantedHeightAt } from '../../blade/bevel.ts';
import type { Backing, Grinder } from '../../grinder/schema.ts';
import { bevelHeight, grindLine, type Face } from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { angleFor, reachable } from './angle.ts';
import type { Cut, Run } from './run.ts';
import type { SpineRestLine } from './types.ts';
import { trust } from './trust.ts';

/** Half step of the central differences, mm. */
const STEP = 1e-3;

/** Change of the bevel height with setoff and edge at a place, absolute, mm/mm. */
const ratesAt = (
  section: Section,
  { edge }: Face,
  setoff: number,
  lean: number,
): { perSetoff: number; perEdge: number } => {
  const span = reachable(section, edge, lean);
  const at = (s: number, e: number): number => {
    const angle = angleFor(section, e, s, lean, e === edge ? span : undefined);
    return angle === undefined ? NaN : bevelHeight(section, { edge: e, angle });
  };
  const rate = (less: number, more: number): number => {
    const slope = Math.abs(more - less) / (2 * STEP);
    return Number.isFinite(slope) ? slope : 0;
  };
  return {
    perSetoff: rate(at(setoff - STEP, edge), at(setoff + STEP, edge)),
    perEdge: rate(at(setoff, edge - STEP), at(setoff, edge + STEP)),
  };
};

const lineOf = (
  { job, after, faces }: Cut,
  { side, setoff }: Run,
  grinder: Grinder,
  backing: Backing,
  noseWidth: number,
): SpineRestLine | undefined => {
  const { work, wishes } = job;
  const wanted = wishes[side];
  if (wanted === undefined) return undefined;
  const { shape, blade, stations } = work;
  const reach = Math.max(grinder.belt.width, noseWidth) / 2;
  const standing = faces.map((face) =>
    face === undefined ? 0 : face.reached.edge - face.own.edge,
  );
  const places: SpineRestLine['places'][number][] = [];
  stations.forEach((station, i) => {
    const { u, height, thickness, bar, steers } = station;
    const [done, face] = [after[i], faces[i]];
    if (done === undefined || face === undefined) return;
    const { own, reached } = face;
    const bevel = grindLine(done, bar);
    const aim = wantedHeightAt(blade.line.follow, wanted, height);
    const here = standing[i] ?? 0;
    const neighbours = [standing[i - 1] ?? here, standing[i + 1] ?? here];
    const windowStep = Math.max(...neighbours.map((there) => Math.abs(there - here)));
    const { perSetoff, perEdge } = ratesAt(bar, own, setoff, grinder.lean);
    places.push({
      u,
      height,
      thickness,
      angle: reached.angle,
      bevelHeight: bevel,
      wanted: aim,
      deviation: bevel - aim,
      leftStanding: here,
      certainty: trust(shape, u, grinder, backing, {
        tilt: own.angle + grinder.lean,
        lean: grinder.lean,
        setoff,
        heightPerSetoff: perSetoff,
        reach,
        windowStep,
        heightPerEdge: perEdge,
      }),
      steers,
    });
  });
  return {
    blade: blade.name,
    side,
    places,
    greatestDeviation: Math.max(
      0,
      ...places.filter(({ steers }) => steers).map(({ deviation }) => Math.abs(deviation)),
    ),
  };
};

/** The grind lines after the last belt: what it leaves, place by place, on every blade and side. */
export const linesOf = (
  runs: readonly Run[],
  grinder: Grinder,
  backing: Backing,
  noseWidth: number,
): SpineRestLine[] =>
  runs
    .filter(({ last }) => last)
    .flatMap((run) =>
      run.cuts.flatMap((cut) => lineOf(cut, run, grinder, backing, noseWidth) ?? []),
    );
