import type { Wheel } from '../../grinder/schema.ts';
import { climbByLip } from './at-lip.ts';
import { atWheel, hollowFor } from './place.ts';
import type { HollowCut, HollowRun } from './run.ts';
import { edgeDeparture, hollowTrust } from './trust.ts';
import type { EdgeRestParameters, HollowLine, HollowPlace } from './types.ts';

/** How far along the stroke anything that holds or grinds a place reaches, mm. */
export const reachOf = ({ lipReach }: EdgeRestParameters, beltWidth: number): number =>
  Math.max(lipReach, beltWidth / 2);

const lineOf = (
  { work, wish, depth, places }: HollowCut,
  run: HollowRun,
  wheel: Wheel,
  reach: number,
  lipHeight: number,
): HollowLine => {
  const found = places.flatMap((place) => {
    if (place === undefined) return [];
    const { u, height, thickness, section, standing, lower, upper, web } = place;
    const at = atWheel(section, wish, run.wheel, lipHeight);
    const wanted = hollowFor(at, wish.centre, depth)?.upper ?? upper;
    const certainty = hollowTrust(work.shape, u, wheel, {
      tilt: standing.tilt,
      climbPerLip: climbByLip(at, run.lip, depth),
      reach,
      guided: place.guided,
      flat: at.face.angle === 0,
    });
    const { tilt } = standing;
    return [
      {
        u,
        height,
        thickness,
        depth,
        tilt,
        lower,
        upper,
        web: web.thickness,
        wanted,
        deviation: upper - wanted,
        certainty,
        guided: place.guided,
      },
    ];
  });
  const measured = places.flatMap((place) => place ?? []);
  const thinnest = measured.reduce<HollowPlace | undefined>(
    (best, place) =>
      best === undefined || place.web.thickness < best.web.thickness ? place : best,
    undefined,
  );
  const ends = new Set(
    measured.filter(({ limits, guided }) => guided && !limits.atSpine).map(({ u }) => u),
  );
  const held = found.filter(({ guided }) => guided).map(({ u }) => u);
  return {
    blade: work.blade.name,
    side: run.side,
    places: found,
    greatestDeviation: Math.max(
      0,
      ...found.filter(({ u }) => ends.has(u)).map(({ deviation }) => Math.abs(deviation)),
    ),
    web: { thickness: NaN, at: NaN, u: NaN, ...thinnest?.web, ...(thinnest && { u: thinnest.u }) },
    guided: held.length > 0 ? Math.max(...held) - Math.min(...held) : 0,
    sagitta: Math.max(0, ...held.map((u) => edgeDeparture(work.shape, u, reach))),
  };
};

/** The hollows after the last belt, place by place, on every blade and side. */
export const hollowLines = (
  runs: readonly HollowRun[],
  wheel: Wheel,
  beltWidth: number,
  parameters: EdgeRestParameters,
): HollowLine[] =>
  runs
    .filter(({ last }) => last)
    .flatMap((run) =>
      run.cuts.map((cut) =>
        lineOf(cut, run, wheel, reachOf(parameters, beltWidth), parameters.lipHeight),
      ),
    );
