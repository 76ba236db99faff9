import { rangeCheck, type CheckResult, type Hole, type Part } from '../../../src/family/index.ts';
import { shiftsOf } from '../needs-of.ts';
import { overNose } from './sweeps.ts';
import { parameterPath, words, type Question } from './question.ts';

const { labels, basis, fix } = words;

/** Travel that must be left beyond the outermost setting, mm. */
const LEAST_RESERVE = 0.25;
/** Spine that must lie on the nose at either end of the stroke, mm. */
const LEAST_SUPPORT = 30;

export const holesOf = (parts: readonly Part[], id: string): readonly Hole[] => {
  const part = parts.find((p) => p.id === id);
  return part?.kind === 'plate' ? part.holes : [];
};

/** How far a screw or pin can travel in a slot of the finished part, mm; null without a slot. */
export const slotTravel = (holes: readonly Hole[], prefix: string): number | null => {
  const slots = holes.filter(({ id, slotLength }) => id.startsWith(prefix) && slotLength);
  const travels = slots.map(({ slotLength = 0, size }) => slotLength - size);
  return travels.length > 0 ? Math.min(...travels) : null;
};

export const spanOf = (values: readonly number[]): number =>
  Math.max(...values) - Math.min(...values);

/** Slots of step and nose against the places their settings need, measured on the parts. */
const slotChecks = (q: Question): CheckResult[] => {
  const { shifts } = shiftsOf(q.stands);
  const onBase = q.context.needsOnBase;
  const step = slotTravel(holesOf(q.parts, 'step'), 'lock');
  const guide = slotTravel(holesOf(q.parts, 'step'), 'guide');
  const nose = slotTravel(holesOf(q.parts, 'nose'), 'slot');
  const parameter = parameterPath('travelReserve');
  const spare = (travel: number | null, needed: number): number | null =>
    travel === null ? null : (travel - needed) / 2;
  const terms = { atLeast: LEAST_RESERVE, basis: basis.geometry, fix: fix.travel, parameter };
  const pins = spanOf(q.context.s.pins.map(([, y]) => y));
  return [
    rangeCheck({
      ...terms,
      id: 'range/travel/nose',
      label: labels.noseTravel,
      found: spare(nose, spanOf(shifts)),
    }),
    ...(q.v.guide === 'slots'
      ? [
          rangeCheck({
            ...terms,
            id: 'range/travel/lock',
            label: labels.travel,
            found: spare(step, spanOf([onBase.min, onBase.max])),
          }),
          rangeCheck({
            ...terms,
            id: 'range/travel/guide',
            label: labels.guideTravel,
            found: spare(guide === null ? null : guide - pins, spanOf([onBase.min, onBase.max])),
          }),
        ]
      : []),
  ];
};

/** How much spine lies on the nose at both ends of the stroke. */
const supportChecks = (q: Question): CheckResult[] => {
  const { half } = q.context.l.nose;
  const found = { heel: [] as Worst[], tip: [] as Worst[] };
  for (const { id } of q.plan.settings) {
    for (const blade of q.design.blades) {
      const poses = q.poses(id, blade.name);
      const [heel, tip] = [poses[0], poses.at(-1)];
      const { outline, ricasso } = blade;
      const length =
        outline.kind === 'dimensions' ? outline.length : (outline.spine.at(-1)?.[0] ?? 0);
      const over = (pose: typeof heel): number =>
        pose ? overNose(pose.frame, -ricasso, length, half) : 0;
      found.heel.push({ value: over(heel), setting: id, blade: blade.name });
      found.tip.push({ value: over(tip), setting: id, blade: blade.name });
    }
  }
  return (['heel', 'tip'] as const).map((end) => {
    const worst = found[end].reduce<Worst | undefined>(
      (best, one) => (best && best.value <= one.value ? best : one),
      undefined,
    );
    return rangeCheck({
      id: `range/support/${end}`,
      label: end === 'heel' ? labels.supportHeel : labels.supportTip,
      found: worst?.value ?? null,
      atLeast: LEAST_SUPPORT,
      basis: basis.practice,
      fix: fix.support,
      parameter: parameterPath(end === 'heel' ? 'wing' : 'tipOverlap'),
      ...(worst ? { pose: { setting: worst.setting, blade: worst.blade } } : {}),
    });
  });
};

interface Worst {
  readonly value: number;
  readonly setting: string;
  readonly blade: string;
}

/** How far the finished guard stands above the highest edge. */
const guardCheck = (q: Question): CheckResult => {
  const block = q.parts.find(({ id }) => id === 'push-block');
  const outer = block?.layers[0]?.profile.outer;
  const top = outer?.kind === 'path' ? Math.max(...outer.vertices.map(({ y }) => y)) : null;
  const edges = q.plan.settings.flatMap(({ blades }) =>
    blades.flatMap((b) => b.places.map(({ seating }) => seating.edge[1])),
  );
  return rangeCheck({
    id: 'range/guard',
    label: labels.guard,
    kind: 'hand',
    found: top === null ? null : q.v.plate + top - Math.max(...edges),
    atLeast: q.v.guardRise,
    basis: basis.setting,
    fix: fix.guard,
    parameter: parameterPath('guardRise'),
  });
};

/** Checks that measure the finished parts: slots, support on the nose, guard. */
export const travelChecks = (q: Question): CheckResult[] => [
  ...slotChecks(q),
  ...supportChecks(q),
  guardCheck(q),
];
