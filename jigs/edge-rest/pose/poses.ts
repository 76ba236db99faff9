import {
  bladeMesh,
  onGrid,
  shapeOf,
  strokeOf,
  type Blade,
  type BladePose,
  type EdgeRestPlan,
  type Vec3,
  type Workshop,
} from '../../../src/family/index.ts';
import { byKey } from '../../shared/later.ts';
import { posesByName, type PosesByName } from '../../shared/pose/by-name.ts';
import { refined } from '../../shared/pose/refined.ts';
import { createRoom, type Room } from '../../shared/pose/placed-points.ts';
import { mirrored, settledOnce, type Settled } from '../../shared/pose/sides.ts';
import { across, NEAR, within, type Touchable } from '../../shared/pose/touchable.ts';
import { cutsOf, isEven } from '../blade.ts';
import type { EdgeContext } from '../context.ts';
import { edgeTouchable, MOST_LEAN, settleEdge, touchedDepth, type EdgeContacts } from './settle.ts';

type PlanSetting = EdgeRestPlan['settings'][number];

/** Poses over a stroke, both ends included. */
const COUNT = 9;
const CHORD = 0.001;
/** What is meshed of a blade ends this far beyond all that can be touched, mm. */
const BESIDE = 1;
/** Blade that still carries load at the tip, mm from its end. */
const LAST = 5;

export const contactsAt = ({ x, v }: EdgeContext, lip: number): EdgeContacts => ({
  half: x.half,
  lipEnd: x.lipEnd,
  pads: x.pads,
  lip,
  lipHeight: v.lipHeight,
});

/** What a rest is to the blades on it: all that their poses take from its layout. */
export interface Bed extends Omit<EdgeContacts, 'lip'> {
  readonly plungeMargin: number;
  readonly tipOverlap: number;
  readonly beltWidth: number;
}

export const bedOf = (c: EdgeContext, beltWidth: number): Bed => {
  const { half, lipEnd, pads, lipHeight } = contactsAt(c, 0);
  const { plungeMargin, tipOverlap } = c.v;
  return { half, lipEnd, pads, lipHeight, plungeMargin, tipOverlap, beltWidth };
};

/** What seat and lip touch of a blade, as it comes, while a place is at the belt's middle. */
interface Edge {
  /** Where it leans by so many degrees: all of that, and the edges that can leave seat or lip. */
  readonly at: (
    tilt: number,
  ) => (u: number) => { readonly near: Touchable; readonly ending: Uint32Array };
  /** Where it was settled at a place already. */
  readonly settled: (u: number) => Settled;
  readonly room: Room;
}

const edgeOf = (blade: Blade, bed: Bed, room: Room, keep: Workshop['keep']): Edge => {
  const { half, lipEnd, lipHeight } = bed;
  const thickest = Math.max(...blade.thickness.map(({ t }) => t));
  const stripOf = byKey((depth: number) => {
    const only = { along: 'edge', reach: touchedDepth(thickest, depth) + BESIDE } as const;
    const strip = keep('blade on an edge rest', JSON.stringify([blade, depth]), () => {
      const mesh = bladeMesh(blade, { chord: CHORD, sides: cutsOf(blade), only });
      return edgeTouchable(mesh.blade, depth);
    });
    return byKey((u: number) => {
      const near = within(strip, u, Math.max(half, lipEnd) + NEAR);
      return { near, ending: across(near, u, [half, lipEnd]) };
    });
  });
  return {
    at: (tilt) => stripOf(Math.abs(tilt) <= MOST_LEAN ? lipHeight : Infinity),
    settled: byKey(settledOnce),
    room,
  };
};

/**
 * The blade over its stroke at one setting, from the plunge stop as far as the lip guides it: edge
 * settled on seat and against lip at the tilt at which the depth is reached.
 */
const posesOf = (
  blade: Blade,
  { at: leaning, settled, room }: Edge,
  setting: PlanSetting,
  bed: Bed,
): BladePose[] => {
  const shape = shapeOf(blade);
  const { from, to } = strokeOf(bed.beltWidth, shape.length, bed.plungeMargin, bed.tipOverlap);
  const places = setting.blades.find((b) => b.blade === blade.name)?.places;
  const tilt = places?.[0]?.standing.tilt;
  // Beyond the last place that the lip guides the blade is led by hand, off this fixture.
  const last = places?.findLast(({ guided }) => guided)?.u ?? from;
  if (tilt === undefined) return [];
  const edge = leaning(tilt);
  const end = Math.max(from, Math.min(to, last));
  const us = Array.from({ length: COUNT }, (_, i) => from + ((end - from) * i) / (COUNT - 1));
  const poseAt = byKey((u: number): BladePose | undefined => {
    const away = Math.min(0, shape.length - LAST - u);
    const at = [u, shape.edge.value(u)] as const;
    const contacts = { ...bed, lip: setting.lip };
    const { near, ending } = edge(u);
    // A blade that is the same on both sides stands on its right one as a mirror shows the left.
    const side = isEven(blade) ? 'left' : setting.side;
    const load = side === 'left' ? -away : away;
    const found = settled(u)([side === 'left' ? 1 : 0, setting.lip, tilt, away], () =>
      settleEdge(near, { side, at, tilt, load }, contacts, room, ending),
    );
    const frame = found && side !== setting.side ? mirrored(found) : found;
    return frame && { setting: setting.id, blade: blade.name, u, frame: onGrid(frame) };
  });
  // Of a stroke with a place at which the blade does not come to rest nothing can be said.
  if (us.some((u) => !poseAt(u))) return [];
  const ends = (u: number): Vec3[] =>
    [-bed.half, bed.half].map((x) => [u + x, shape.edge.value(u + x), 0]);
  return refined(us, poseAt, ends);
};

/** Poses of every blade at every setting, found when first asked for; none for unknown names. */
export const settledPoses = (
  blades: readonly Blade[],
  settings: readonly PlanSetting[],
  bed: Bed,
  keep: Workshop['keep'],
): PosesByName => {
  const room = createRoom();
  return posesByName(
    blades,
    settings,
    (blade) => edgeOf(blade, bed, room, keep),
    (blade, edge, setting) => posesOf(blade, edge, setting, bed),
  );
};
