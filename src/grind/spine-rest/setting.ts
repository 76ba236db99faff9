import type { Side } from '../../blade/schema.ts';
import { edgeNow, facing, volumeBetween } from './carry.ts';
import { firstContact } from './first-contact.ts';
import { pushWindow, type Pushing } from './hold-place.ts';
import { progress } from './progress.ts';
import { alongFace, contactOf } from './push.ts';
import type { Cut, Run } from './run.ts';
import { setoffPerDegree, settle } from './settle.ts';
import { bevelHeight, grindLine, ground } from '../section/ground.ts';
import type {
  BladeAtSetting,
  Dial,
  Expected,
  FirstContact,
  SettledPlace,
  SpineRestSetting,
} from './types.ts';
import { undercutMargin } from './undercut.ts';
import { leastUnderBelt } from './windows.ts';

/** What a setting is described with, besides the run itself. */
export interface Describing {
  readonly lean: number;
  readonly pushing: Pushing;
  readonly dial: Dial;
  readonly scratch: number;
  readonly settingTolerance: number;
  /** The last run of the same side: the finished faces. */
  readonly finished: Run;
}

/** A place as it is described, and where belt and bevel touch there. */
interface Stood {
  readonly place: SettledPlace;
  readonly contact: readonly [low: number, high: number] | undefined;
}

const placesOf = ({ job, before, after, faces }: Cut, lean: number): Stood[] => {
  const { stations } = job.work;
  const angles = stations.map(({ u }, i) => ({ u, angle: faces[i]?.own.angle ?? Infinity }));
  const { from, to } = job.stroke;
  const stood: Stood[] = [];
  stations.forEach(({ u, height, thickness, bar }, i) => {
    const [section, done, face] = [before[i], after[i], faces[i]];
    if (section === undefined || done === undefined || face === undefined) return;
    const { own, reached } = face;
    const middle = Math.min(to, Math.max(from, u));
    const seating = settle(section, own, lean);
    const place = {
      u,
      height,
      thickness,
      seating,
      edge: own.edge,
      reachedAngle: reached.angle,
      reachedEdge: reached.edge,
      leftStanding: reached.edge - own.edge,
      bevelHeight: grindLine(done, bar),
      strokeTilt: leastUnderBelt(angles, job.stroke, middle) + lean,
    };
    stood.push({ place, contact: contactOf(section, own, seating) });
  });
  return stood;
};

const expectedOf = ({ job, before, after, faces }: Cut, d: Describing): Expected[] => {
  const { work } = job;
  return (['heel', 'middle', 'tip'] as const).flatMap((place): Expected[] => {
    const i = work[place];
    const [station, section, face] = [work.stations[i], before[i], faces[i]?.reached];
    const done = after[i];
    if (station === undefined || section === undefined || done === undefined) return [];
    if (face === undefined) return [];
    const push = pushWindow(section, face, settle(section, face, d.lean), d.pushing);
    return [{ place, u: station.u, bevelHeight: grindLine(done, station.bar), push }];
  });
};

/** Least margin of one blade's pass against its finished faces, where it steers the setoff. */
const marginOf = (cut: Cut, run: Run, d: Describing): number => {
  const done = d.finished.cuts.find(({ job }) => job === cut.job);
  if (run.last || done === undefined) return 0;
  let least = Infinity;
  cut.job.work.stations.forEach(({ bar, steers }, i) => {
    const [pass, finished, section] = [cut.faces[i], done.faces[i], cut.before[i]];
    if (!steers || pass === undefined || finished === undefined || section === undefined) return;
    const rate = setoffPerDegree(section, pass.reached, d.lean);
    const slack = { scratch: d.scratch, tolerance: d.settingTolerance, setoffPerDegree: rate };
    const bevel = bevelHeight(bar, finished.reached);
    least = Math.min(least, undercutMargin(pass.reached, finished.reached, bevel, slack));
  });
  return least;
};

const bladeAt = (
  cut: Cut,
  places: readonly SettledPlace[],
  run: Run,
  d: Describing,
): BladeAtSetting => ({
  blade: cut.job.work.blade.name,
  places,
  expected: expectedOf(cut, d),
  volume: volumeBetween(cut.job.work, cut.before, cut.after),
  undercutMargin: marginOf(cut, run, d),
});

/** Rows of the progress table between the edge as it comes and the edge to stop at. */
const ROWS = 6;

const NOWHERE: FirstContact = { at: 'face', belowEdge: 0, pushFrom: 0, seated: true };

/** Describes one belt on one side; undefined when the first blade cannot be set at its bevel place. */
export const describe = (run: Run, d: Describing): SpineRestSetting | undefined => {
  const [first] = run.cuts;
  if (first === undefined) return undefined;
  const { work } = first.job;
  const i = work.reference;
  const [station, section, face] = [work.stations[i], first.before[i], first.faces[i]];
  if (station === undefined || section === undefined || face === undefined) return undefined;
  const { own } = face;
  const other: Side = run.side === 'left' ? 'right' : 'left';
  // Both sides' edges as the calipers span them: the far one is what it was.
  const far = edgeNow(facing(facing(section, run.side), other));
  const start = Math.max(own.edge, edgeNow(section));
  const edges = Array.from(
    { length: ROWS },
    (_, k) => start + ((own.edge - start) * k) / (ROWS - 1),
  );
  const rows = progress(
    section,
    run.setoff,
    d.lean,
    start > own.edge ? edges : [own.edge],
    station.bar,
  );
  const stood = run.cuts.map((cut) => placesOf(cut, d.lean));
  const blades = run.cuts.map((cut, k) =>
    bladeAt(cut, stood[k]?.map(({ place }) => place) ?? [], run, d),
  );
  const seating = settle(section, own, d.lean);
  const edge = alongFace(seating.edge, d.lean);
  let [low, high, cornerDistance, stepContact] = [edge, edge, Infinity, -Infinity];
  for (const places of stood)
    for (const { place, contact } of places) {
      cornerDistance = Math.min(cornerDistance, place.seating.seat[0]);
      stepContact = Math.max(stepContact, place.seating.step[1]);
      low = Math.min(low, contact?.[0] ?? low);
      high = Math.max(high, contact?.[1] ?? high);
    }
  return {
    id: `${run.step}-${run.side}`,
    step: run.step,
    side: run.side,
    belt: run.pass.belt,
    backing: run.pass.backing,
    setoff: run.setoff,
    angle: own.angle,
    bevelHeight: grindLine(ground(section, own), station.bar),
    edgeSide: own.edge,
    edgeStop: own.edge + far,
    progress: rows.map(({ edge: edgeSide, ...row }) => ({
      edgeSide,
      edge: edgeSide + far,
      ...row,
    })),
    dial: d.dial,
    push: pushWindow(section, own, seating, d.pushing),
    firstContact: firstContact(section, run.setoff, d.lean, d.pushing.friction[0]) ?? NOWHERE,
    cornerDistance,
    stepContact,
    contact: [low, high],
    scratch: d.scratch,
    blades,
  };
};
