import { facing } from '../spine-rest/carry.ts';
import { edgeOf, isBar } from '../spine-rest/stations.ts';
import type { SequencePass } from '../spine-rest/types.ts';
import { ground, type Face } from '../section/ground.ts';
import { runCarriage, type CarriageJob, type CarriageRun, type States } from './run.ts';
import type { CarriageParameters } from './types.ts';

/** The face that is left at a station by all ways a side is clamped: the one that goes deepest. */
const finishedAt = (runs: readonly CarriageRun[], job: CarriageJob, i: number): Face | undefined =>
  runs
    .flatMap(({ cuts }) => cuts.filter((cut) => cut.job === job).map(({ faces }) => faces[i]))
    .reduce((best, face) => (face && (!best || face.edge < best.edge) ? face : best), undefined);

/**
 * The blades as they come to the carriage: `asHeatTreated` thick behind the edge, their bevels taken
 * to lie parallel to the finished ones (an estimate, as on a spine rest: it bears on what the first
 * belts take and are told to stop at). An edge as thick as the stock is an unground bar.
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
      (['left', 'right'] as const).reduce((section, side) => {
        const face = finishedAt(
          runs.filter((run) => run.side === side),
          job,
          i,
        );
        const edge = edgeOf(work, station, side, work.blade.edge.asHeatTreated);
        if (face === undefined || isBar(work, station)) return section;
        return facing(ground(facing(section, side), { edge, angle: face.angle }), side);
      }, station.bar),
    );
  });
};
