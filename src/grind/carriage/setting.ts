import { cos, sin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import type { Vec2 } from '../../geometry/vector.ts';
import type { Place } from '../../blade/place.ts';
import type { Grinder } from '../../grinder/schema.ts';
import {
  bearing,
  behindFace,
  bevelHeight,
  grindLine,
  ground,
  type Face,
} from '../section/ground.ts';
import type { Section } from '../section/section.ts';
import { reach } from '../section/support.ts';
import { edgeNow, facing, volumeBetween } from '../spine-rest/carry.ts';
import { alongFace } from '../spine-rest/push.ts';
import { scratchDepth } from '../spine-rest/scratch.ts';
import { edgeOf } from '../spine-rest/stations.ts';
import { undercutMargin } from '../spine-rest/undercut.ts';
import { fenceDistance } from './fence.ts';
import { heelAt } from './heel.ts';
import { jawClearance } from './jaw.ts';
import { midplaneAt } from './mount.ts';
import { carriagePush } from './push.ts';
import type { CarriageCut, CarriageRun } from './run.ts';
import { heelBehind, onStage } from './stage.ts';
import type { CarriageBlade, CarriageParameters, CarriagePlace, CarriageSetting } from './types.ts';

const SAMPLES = [0, 0.25, 0.5, 0.75, 1];

/** A point of the section at a place, `v` from the spine, as (u, v) of the blade. */
const inBlade = ({ spine, slope }: Place, v: number): Vec2 => [
  spine[0] - v * sin(radians(slope)),
  spine[1] + v * cos(radians(slope)),
];

/** How far a point of the blade lies below the line along the stroke through the set edge, mm. */
const below = ({ turned: { at, turn } }: CarriageCut, [u, v]: Vec2): number =>
  (u - at[0]) * sin(radians(turn)) - (v - at[1]) * cos(radians(turn));

/** Lowest and highest contact of a cut, as depths below that line. */
const depthsOf = (cut: CarriageCut): number[] =>
  cut.faces.flatMap((face, i) => {
    const [section, place] = [cut.before[i], cut.job.mount.places[i]];
    if (face === undefined || section === undefined || place === undefined) return [];
    return (bearing(section, face) ?? []).map(([, v]) => below(cut, inBlade(place, v)));
  });

const placesOf = ({ job: { mount }, after, faces }: CarriageCut, run: CarriageRun) =>
  mount.work.stations.flatMap((station, i): CarriagePlace[] => {
    const [done, face] = [after[i], faces[i]];
    if (done === undefined || face === undefined) return [];
    return [
      {
        u: station.u,
        height: station.height,
        thickness: station.thickness,
        edge: edgeNow(done),
        wantedEdge: edgeOf(mount.work, station, run.side, run.pass.edge),
        angle: face.angle,
        bevelHeight: grindLine(done, station.bar),
      },
    ];
  });

interface Slack {
  readonly scratch: number;
  readonly angle: number;
  readonly fence: number;
}

const marginOf = (cut: CarriageCut, run: CarriageRun, finished: CarriageRun, slack: Slack) => {
  const done = finished.cuts.find(({ job }) => job === cut.job);
  if (run.last || done === undefined) return 0;
  const margins = cut.job.mount.work.stations.flatMap(({ bar, steers }, i) => {
    const [pass, final] = [cut.faces[i], done.faces[i]];
    if (!steers || pass === undefined || final === undefined) return [];
    return undercutMargin(pass, final, bevelHeight(bar, final), {
      scratch: slack.scratch + slack.fence,
      tolerance: slack.angle,
      setoffPerDegree: 1,
    });
  });
  return Math.min(...margins);
};

const bladeAt = (
  cut: CarriageCut,
  run: CarriageRun,
  finished: CarriageRun,
  slack: Slack,
): CarriageBlade => {
  const { work } = cut.job.mount;
  const expected = (['heel', 'middle', 'tip'] as const).flatMap((place) => {
    const i = work[place];
    const [station, done] = [work.stations[i], cut.after[i]];
    if (station === undefined || done === undefined || cut.faces[i] === undefined) return [];
    return [{ place, u: station.u, bevelHeight: grindLine(done, station.bar) }];
  });
  return {
    blade: work.blade.name,
    places: placesOf(cut, run),
    expected,
    volume: volumeBetween(work, cut.before, cut.after),
    undercutMargin: marginOf(cut, run, finished, slack),
  };
};

/** Where a plane that comes up square to itself first touches a section, and its edge then. */
const firstTouch = (section: Section, { edge, angle }: Face) => {
  const { normal, offset } = behindFace(section.height, { edge, angle });
  const { distance } = reach(section.outline, normal);
  const touching = section.outline.vertices.filter(
    ({ x, y }) => distance - (x * normal[0] + y * normal[1]) < 1e-7,
  );
  const [first, ...others] = touching;
  const at: CarriageSetting['firstContact'] =
    others.length > 0
      ? 'face'
      : first !== undefined && section.height - first.y < 1e-9
        ? 'edge'
        : 'shoulder';
  return { at, edge: edge + (distance - offset) / cos(radians(angle)) };
};

/** Rows of the progress table between first touch and fence. */
const ROWS = 6;

/** The sections of the bevel place of the first blade, and its face. */
const referenceOf = ({ cuts: [first] }: CarriageRun) => {
  if (first === undefined) return undefined;
  const { work } = first.job.mount;
  // A clamping on the tip is told at the place it is set by.
  const nearest = work.stations.reduce(
    (best, { u }, i) =>
      Math.abs(u - first.turned.at[0]) <
      Math.abs((work.stations[best]?.u ?? Infinity) - first.turned.at[0])
        ? i
        : best,
    0,
  );
  const i = first.turned === first.job.turned[0] ? work.reference : nearest;
  const [station, section, face] = [work.stations[i], first.before[i], first.faces[i]];
  return station && section && face && { first, station, section, face };
};

const progressOf = (run: CarriageRun, lean: number, far: number): CarriageSetting['progress'] => {
  const at = referenceOf(run);
  if (at === undefined) return [];
  const { section, station, face } = at;
  const start = firstTouch(section, face).edge;
  const count = start > face.edge ? ROWS : 1;
  return Array.from({ length: count }, (_, k) => {
    const edge = count === 1 ? face.edge : start + ((face.edge - start) * k) / (ROWS - 1);
    const now = ground(section, { edge, angle: face.angle });
    const gap = ((edge - face.edge) * cos(radians(run.faceAngle))) / cos(radians(lean));
    const left = edgeNow(now);
    return {
      gap: Math.max(0, gap),
      edgeSide: left,
      edge: left + far,
      angle: face.angle,
      bevelHeight: grindLine(now, station.bar),
    };
  });
};

export interface Describing {
  readonly grinder: Grinder;
  readonly parameters: CarriageParameters;
  /** The run before, for turns from the last. */
  readonly before: CarriageRun;
  /** The last run of the same side and clamping. */
  readonly finished: CarriageRun;
}

const fenceOf = (run: CarriageRun, p: CarriageParameters, lean: number): number =>
  fenceDistance(run.cornerForward, p.edgeHeight, p.footRadius, run.faceAngle, lean);

/** The height of the abrasive face above the base along it, of points `depth` below the edge. */
const alongAt = (run: CarriageRun, p: CarriageParameters, lean: number, depth: number): number => {
  const tilt = run.faceAngle + lean;
  const stage = { footRadius: p.footRadius, footCentre: fenceOf(run, p, lean), tilt };
  const corner = alongFace(onStage(stage, run.cornerForward, p.edgeHeight), lean);
  return corner - depth / cos(radians(run.faceAngle));
};

/** Describes one belt on one side; undefined when the first blade is not reached where it is set. */
export const describe = (run: CarriageRun, d: Describing): CarriageSetting | undefined => {
  const { grinder, parameters: p } = d;
  const { lean } = grinder;
  const at = referenceOf(run);
  const belt = grinder.belts.find(({ id }) => id === run.pass.belt);
  if (at === undefined || belt === undefined) return undefined;
  const { first, section, station, face } = at;
  const other = edgeNow(facing(section, 'left'));
  const tilt = run.faceAngle + lean;
  const heel = heelAt(p, tilt, d.before.faceAngle + lean, lean, p);
  const footCentre = fenceOf(run, p, lean);
  // Where the edge bends both ways some of it stands higher than where it is held.
  const along = [0, ...run.cuts.flatMap(depthsOf)].map((depth) => alongAt(run, p, lean, depth));
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const sign = grinder.belt.direction === 'up' ? -1 : 1;
  const [least, most] = p.friction;
  const scratch = scratchDepth(belt.grit);
  const slack = { scratch, angle: p.angleTolerance, fence: p.fenceTolerance };
  const { half } = first.job.mount;
  const name = `${run.step}-${run.side}`;
  return {
    id: run.facet === 0 ? name : `${name}-tip-${run.facet}`,
    step: run.step,
    side: run.side,
    belt: run.pass.belt,
    backing: run.pass.backing,
    facet: run.facet,
    angle: run.angle,
    faceAngle: run.faceAngle,
    tilt,
    heel,
    cornerForward: run.cornerForward,
    footCentre,
    fence: footCentre - p.footRadius,
    fenceFromLast: footCentre - fenceOf(d.before, p, lean),
    bevelHeight: grindLine(ground(section, face), station.bar),
    edgeSide: face.edge,
    edgeStop: face.edge + other,
    progress: progressOf(run, lean, other),
    firstContact: firstTouch(section, face).at,
    contact: [low, high],
    push: carriagePush(
      {
        contact: low,
        footCentre,
        heelBehind: heelBehind(p, heel.extension, tilt),
        lean,
      },
      {
        height: p.pushHeight,
        reserve: p.reserve,
        friction: SAMPLES.map((x) => sign * (least + x * (most - least))),
      },
    ),
    jawOverBelt: jawClearance(
      p.jaw.below,
      p.jaw.thickness,
      2 * half,
      run.cornerForward - p.forward,
      run.faceAngle,
    ),
    jawBeside: p.jaw.gap + p.plungeStop - grinder.belt.tracking,
    scratch,
    clamping: run.cuts.map(({ job: { mount }, turned }) => ({
      facet: run.facet,
      blade: mount.work.blade.name,
      u: turned.at[0],
      turn: turned.turn,
      midplane: midplaneAt(mount, turned.at[0]),
    })),
    blades: run.cuts.map((cut) => bladeAt(cut, run, d.finished, slack)),
  };
};
