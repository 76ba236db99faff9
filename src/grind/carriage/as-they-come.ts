import { asItComes } from '../spine-rest/carry.ts';
import type { SequencePass } from '../spine-rest/types.ts';
import type { Face } from '../section/ground.ts';
import { runCarriage, type CarriageJob, type CarriageRun, type States } from './run.ts';
import type { CarriageParameters } from './types.ts';

/** The face that is left at a station by all ways a side is clamped: the one that goes deepest. */
const finishedAt = (runs: readonly CarriageRun[], job: CarriageJob, i: number): Face | undefined =>
  runs
    .flatMap(({ cuts }) => cuts.filter((cut) => cut.job === job).map(({ faces }) => faces[i]))
    .reduce((best, face) => (face && (!best || face.edge < best.edge) ? face : best), undefined);

/**
 * The blades as they come to the carriage: at `asHeatTreated` thick behind the edge, their bevels taken
 * to lie parallel to the finished ones (an estimate, as on a spine rest: it bears on what the first
 * belts take and are told to stop at).
 */
export const asTheyCome = (
  jobs: readonly CarriageJob[],
  last: SequencePass | undefined,
  parameters: CarriageParameters,
): States => {
  const bars = jobs.map(({ mount }) => mount.work.stations.map(({ bar }) => bar));
  const runs = last === undefined ? [] : runCarriage(bars, jobs, [last], parameters);
  return jobs.map((job) => {
    const { work } = job.mount;
    return work.stations.map((station, i) =>
      asItComes(work, station, (side) => {
        const own = runs.filter((run) => run.side === side);
        return finishedAt(own, job, i)?.angle;
      }),
    );
  });
};
