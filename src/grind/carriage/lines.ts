import { wantedHeightAt } from '../../blade/bevel.ts';
import { type Certainty, exact } from '../../core/certainty.ts';
import { sin, tan } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { supportRadius } from '../../grinder/belt-path.ts';
import type { Backing, Grinder } from '../../grinder/schema.ts';
import { text } from '../../text/index.ts';
import { grindLine, type Face } from '../section/ground.ts';
import { edgeNow } from '../spine-rest/carry.ts';
import { edgeOf } from '../spine-rest/stations.ts';
import type { CarriageCut, CarriageRun } from './run.ts';
import { tipTurn } from './tip.ts';
import type { CarriageLine } from './types.ts';

const words = text.grind.certainty;
const own = text.family.carriage.certainty;

/** Greatest change of the blank's slope of thickness that still counts as even, mm/mm. */
const EVEN = 1e-9;

/**
 * How far a bevel height can be trusted. One rigid plane cuts a blade that does not move on its
 * upright, so every section of an even blade is exact, whatever the outline does. A taper makes
 * two small errors: the section at a place whose spine slopes by s has its own thickness taken
 * for its whole height, T' H sin s / 2 on the flank; and the yaw k of the midplane is taken to the
 * first order, T k^2 on the edge and the flank. Both over tan a.
 */
const trust = (
  { job: { mount } }: CarriageCut,
  i: number,
  face: Face,
  grinder: Grinder,
  backing: Backing,
): Certainty => {
  if (backing.kind === 'leather' || backing.kind === 'rubber')
    return { kind: 'estimate', basis: words.soft };
  if (supportRadius(grinder, backing) !== undefined)
    return { kind: 'estimate', basis: words.radius };
  const station = mount.work.stations[i];
  if (station === undefined) return exact;
  const { u, height, thickness, slope } = station;
  const taper = Math.abs(mount.work.shape.thickness.slope(u));
  const parts = [
    { by: (taper * height * Math.abs(sin(radians(slope)))) / 2, reason: words.taper },
    { by: thickness * mount.yaw ** 2, reason: own.yaw },
  ].filter(({ by }) => by > EVEN);
  if (parts.length === 0) return exact;
  const by = parts.reduce((sum, part) => sum + part.by, 0) / tan(radians(face.angle));
  return { kind: 'bounded', by, reason: parts.map(({ reason }) => reason).join('; ') };
};

/** The face that lies deepest at each station, of all clampings of the last belt on one side. */
const deepest = (cuts: readonly CarriageCut[], i: number): Face | undefined =>
  cuts
    .flatMap(({ faces }) => faces[i] ?? [])
    .reduce<Face | undefined>(
      (best, face) => (best && best.edge <= face.edge ? best : face),
      undefined,
    );

const lineOf = (
  cuts: readonly CarriageCut[],
  run: CarriageRun,
  grinder: Grinder,
  backing: Backing,
): CarriageLine | undefined => {
  const [cut, end] = [cuts[0], cuts.at(-1)];
  const wanted = cut?.job.wishes[run.side];
  if (cut === undefined || end === undefined || wanted === undefined) return undefined;
  const { work } = cut.job.mount;
  const { blade, shape } = work;
  const places = work.stations.flatMap((station, i) => {
    const [done, face] = [end.after[i], deepest(cuts, i)];
    if (done === undefined || face === undefined) return [];
    const bevel = grindLine(done, station.bar);
    const aim = wantedHeightAt(blade.line.follow, wanted, station.height);
    return [
      {
        u: station.u,
        height: station.height,
        thickness: station.thickness,
        angle: face.angle,
        bevelHeight: bevel,
        wanted: aim,
        deviation: bevel - aim,
        leftStanding: edgeNow(done) - edgeOf(work, station, run.side, run.pass.edge),
        certainty: trust(cut, i, face, grinder, backing),
        steers: station.steers,
      },
    ];
  });
  const steering = places.filter(({ steers }) => steers);
  const u = cut.job.turned[0]?.at[0] ?? 0;
  return {
    blade: blade.name,
    side: run.side,
    places,
    greatestDeviation: Math.max(0, ...steering.map(({ deviation }) => Math.abs(deviation))),
    tip: {
      turn: tipTurn(shape, u),
      leftSteering: Math.max(0, ...steering.map(({ leftStanding }) => leftStanding)),
      left: Math.max(0, ...places.map(({ leftStanding }) => leftStanding)),
    },
  };
};

/** The grind lines after the last belt: what all its clampings leave on every blade and side. */
export const linesOf = (
  runs: readonly CarriageRun[],
  grinder: Grinder,
  backing: Backing,
): CarriageLine[] => {
  const last = runs.filter((run) => run.last);
  return last
    .filter(({ facet }) => facet === 0)
    .flatMap((run) =>
      run.cuts.flatMap(({ job }) => {
        const cuts = last
          .filter(({ side }) => side === run.side)
          .flatMap((one) => one.cuts.filter((cut) => cut.job === job));
        return lineOf(cuts, run, grinder, backing) ?? [];
      }),
    );
};
