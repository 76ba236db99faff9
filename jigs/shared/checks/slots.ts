import { rangeCheck, type CheckResult, type Hole, type Part } from '../../../src/family/index.ts';
import { shiftsOf } from '../needs-of.ts';
import type { Context } from '../parts/context.ts';
import type { Stand } from '../site.ts';
import { parameterPath, words } from './words.ts';

/** Holes of a finished plate; none where there is no such plate. */
const holesOf = (parts: readonly Part[], id: string): readonly Hole[] => {
  const part = parts.find((p) => p.id === id);
  return part?.kind === 'plate' ? part.holes : [];
};

/** How far a screw or pin can travel in a slot of the finished part, mm; null without a slot. */
const slotTravel = (holes: readonly Hole[], prefix: string): number | null => {
  const slots = holes.filter(({ id, slotLength }) => id.startsWith(prefix) && slotLength);
  const travels = slots.map(({ slotLength = 0, size }) => slotLength - size);
  return travels.length > 0 ? Math.min(...travels) : null;
};

/** From the least to the greatest of some numbers. */
const spanOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** Travel that must be left beyond the outermost setting, mm. */
const LEAST_RESERVE = 0.25;

/** What the slide is called, and what mends a slot that is too short. */
export interface SlotWords {
  readonly travel: string;
  readonly noseTravel: string;
  readonly guideTravel: string;
  readonly fix: string;
}

/** Slots of slide and nose against the places their settings need, measured on the parts. */
export const slotChecks = (
  { v, s, needsOnBase: { min, max } }: Context,
  stands: readonly Stand[],
  parts: readonly Part[],
  slide: string,
  labels: SlotWords,
): CheckResult[] => {
  const { shifts } = shiftsOf(stands);
  const holes = holesOf(parts, slide);
  const guide = slotTravel(holes, 'guide');
  const pins = v.guide === 'slots' ? spanOf(s.pins.map(([, y]) => y)) : 0;
  const spare = (id: string, label: string, travel: number | null, needed: number): CheckResult =>
    rangeCheck({
      id: `range/travel/${id}`,
      label,
      found: travel === null ? null : (travel - needed) / 2,
      atLeast: LEAST_RESERVE,
      basis: words.basis.geometry,
      fix: labels.fix,
      parameter: parameterPath('travelReserve'),
    });
  return [
    spare('nose', labels.noseTravel, slotTravel(holesOf(parts, 'nose'), 'slot'), spanOf(shifts)),
    ...(v.guide === 'slots'
      ? [
          spare('lock', labels.travel, slotTravel(holes, 'lock'), max - min),
          spare('guide', labels.guideTravel, guide === null ? null : guide - pins, max - min),
        ]
      : []),
  ];
};
