import {
  bladeMesh,
  onGrid,
  shapeOf,
  strokeOf,
  type Blade,
  type BladePose,
  type EdgeRestPlan,
} from '../../../src/family/index.ts';
import type { Touchable } from '../../shared/pose/touchable.ts';
import { cutsOf } from '../blade.ts';
import type { EdgeContext } from '../context.ts';
import { edgeTouchable, settleEdge, type EdgeContacts } from './settle.ts';

type PlanSetting = EdgeRestPlan['settings'][number];

/** Poses over a stroke, both ends included. */
const COUNT = 9;
const CHORD = 0.001;
/** Blade that still carries load at the tip, mm from its end. */
const LAST = 5;

export const contactsAt = ({ x, v }: EdgeContext, lip: number): EdgeContacts => ({
  half: x.half,
  lipEnd: x.lipEnd,
  pads: x.pads,
  lip,
  lipHeight: v.lipHeight,
});

/** What seat and lip touch of each blade, as it comes. */
export const edgesOf = (blades: readonly Blade[]): ReadonlyMap<string, Touchable> =>
  new Map(
    blades.map((blade) => {
      const { blade: mesh } = bladeMesh(blade, { chord: CHORD, sides: cutsOf(blade) });
      return [blade.name, edgeTouchable(mesh)];
    }),
  );

/**
 * The blade over its stroke at one setting, from the plunge stop as far as the lip guides it: edge
 * settled on seat and against lip at the tilt at which the depth is reached.
 */
export const posesOf = (
  blade: Blade,
  edge: Touchable,
  setting: PlanSetting,
  c: EdgeContext,
  beltWidth: number,
): BladePose[] => {
  const shape = shapeOf(blade);
  const { plungeMargin, tipOverlap } = c.v;
  const { from, to } = strokeOf(beltWidth, shape.length, plungeMargin, tipOverlap);
  const places = setting.blades.find((b) => b.blade === blade.name)?.places;
  const tilt = places?.[0]?.standing.tilt;
  // Beyond the last place that the lip guides the blade is led by hand, off this fixture.
  const last = places?.findLast(({ guided }) => guided)?.u ?? from;
  if (tilt === undefined) return [];
  const end = Math.max(from, Math.min(to, last));
  const us = Array.from({ length: COUNT }, (_, i) => from + ((end - from) * i) / (COUNT - 1));
  return us.flatMap((u): BladePose[] => {
    const load = Math.min(0, shape.length - LAST - u) * (setting.side === 'left' ? -1 : 1);
    const at = [u, shape.edge.value(u)] as const;
    const frame = settleEdge(edge, setting.side, at, tilt, contactsAt(c, setting.lip), load);
    return frame ? [{ setting: setting.id, blade: blade.name, u, frame: onGrid(frame) }] : [];
  });
};
