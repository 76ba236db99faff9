import { rangeCheck, shapeOf, type CheckResult } from '../../../src/family/index.ts';
import { overNose } from '../../spine-rest/checks/sweeps.ts';
import { holesOf, slotTravel, spanOf } from '../../spine-rest/checks/travel.ts';
import { shiftsOf } from '../../spine-rest/needs-of.ts';
import { parameterPath, words, type Question } from './question.ts';

const { labels, basis, fix } = words;

/** Travel that must be left beyond the outermost setting, mm. */
const LEAST_RESERVE = 0.25;
/** Edge that must lie on the seat at either end of the stroke, mm. */
const LEAST_SUPPORT = 20;

/** Slots of lip slide and nose against the places their settings need, measured on the parts. */
const slotChecks = (q: Question): CheckResult[] => {
  const { rig, stands } = q.context;
  const { min, max } = rig.needsOnBase;
  const spare = (travel: number | null, needed: number): number | null =>
    travel === null ? null : (travel - needed) / 2;
  const terms = {
    atLeast: LEAST_RESERVE,
    basis: basis.geometry,
    fix: fix.travel,
    parameter: parameterPath('travelReserve'),
  };
  const nose = slotTravel(holesOf(q.parts, 'nose'), 'slot');
  const lock = slotTravel(holesOf(q.parts, 'lip-slide'), 'lock');
  const guide = slotTravel(holesOf(q.parts, 'lip-slide'), 'guide');
  const pins = q.v.guide === 'slots' ? spanOf(rig.s.pins.map(([, y]) => y)) : 0;
  return [
    rangeCheck({
      ...terms,
      id: 'range/travel/nose',
      label: labels.noseTravel,
      found: spare(nose, spanOf(shiftsOf(stands).shifts)),
    }),
    ...(q.v.guide === 'slots'
      ? [
          rangeCheck({
            ...terms,
            id: 'range/travel/lock',
            label: labels.travel,
            found: spare(lock, max - min),
          }),
          rangeCheck({
            ...terms,
            id: 'range/travel/guide',
            label: labels.guideTravel,
            found: spare(guide === null ? null : guide - pins, max - min),
          }),
        ]
      : []),
  ];
};

/** How much edge lies on the seat with the plunge, and with the tip, at the belt. */
const supportChecks = (q: Question): CheckResult[] =>
  (['heel', 'tip'] as const).map((end) => {
    const all = q.plan.settings.flatMap(({ id }) =>
      q.design.blades.flatMap((blade) => {
        const poses = q.poses(id, blade.name);
        const pose = end === 'heel' ? poses[0] : poses.at(-1);
        const { length } = shapeOf(blade);
        const found = pose ? overNose(pose.frame, -blade.ricasso, length, q.context.x.half) : 0;
        return [{ found, pose: { setting: id, blade: blade.name } }];
      }),
    );
    const [worst] = all.sort((a, b) => a.found - b.found);
    return rangeCheck({
      id: `range/support/${end}`,
      label: end === 'heel' ? labels.supportHeel : labels.supportTip,
      found: worst?.found ?? null,
      atLeast: LEAST_SUPPORT,
      basis: basis.practice,
      fix: fix.support,
      parameter: parameterPath(end === 'heel' ? 'stepWing' : 'tipOverlap'),
      ...(worst ? { pose: worst.pose } : {}),
    });
  });

/** How far the finished guard stands above the highest place of any blade. */
const guardCheck = (q: Question): CheckResult => {
  const outer = q.parts.find(({ id }) => id === 'push-block')?.layers[0]?.profile.outer;
  const top = outer?.kind === 'path' ? Math.max(...outer.vertices.map(({ y }) => y)) : null;
  const highest = Math.max(
    ...q.plan.settings.flatMap(({ blades }) =>
      blades.flatMap((b) => b.places.map(({ standing, height }) => standing.origin[1] + height)),
    ),
  );
  return rangeCheck({
    id: 'range/guard',
    label: labels.guard,
    kind: 'hand',
    found: top === null ? null : top - q.context.x.under - highest,
    atLeast: q.v.guardRise,
    basis: basis.setting,
    fix: fix.guard,
    parameter: parameterPath('guardRise'),
  });
};

/** Checks that measure the finished parts: slots, support on the seat, guard. */
export const travelChecks = (q: Question): CheckResult[] => [
  ...slotChecks(q),
  ...supportChecks(q),
  guardCheck(q),
];
