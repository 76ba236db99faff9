import {
  all,
  answerAll,
  chain,
  fabricationChecks,
  ok,
  planWithStrip,
  stepAtPin,
  text,
  type BladePose,
  type CheckResult,
  type Placement,
  type Result,
  type Side,
  type SpineRestInput,
  type SpineRestPlan,
  type StripFound,
  type StripKit,
  type StripSetting,
  type StripWish,
} from '../../../src/family/index.ts';
import { dialOf, PITCH } from '../../shared/feed.ts';
import { SIZE } from '../../shared/layout/sizes.ts';
import { stripSetUpsOf } from '../checks/pairs.ts';
import type { Question } from '../checks/question.ts';
import { mainPads } from '../pads.ts';
import { withTight } from '../../shared/tight.ts';
import { tightOf } from '../tight.ts';
import { stripNumbers } from './numbers.ts';
import { onRoundedStep, placedOnBlade, stripItems } from './carried.ts';
import { stripParts } from './parts.ts';
import { ROUNDED_STEP } from './rounded-step.ts';

const words = text.family.spineRest.strip;

type Poses = (setting: string, blade: string) => readonly BladePose[];

/** Where everything stands at the settings of a plan, with blades posed as given. */
export type Places = (
  plan: SpineRestPlan,
  poses: Poses,
) => (setting: string) => readonly Placement[];

/** Dial readings of the strip's settings: turns of the feed screw from the pin zero. */
export const settingsWith = ({ settings, lean }: SpineRestPlan): StripSetting[] => {
  const zero = stepAtPin(SIZE.zeroPin / 2, lean);
  return settings.map(({ id, setoff, push: { from, to } }) => {
    const { turnsFromZero, division } = dialOf(setoff - zero, setoff / PITCH);
    return { setting: id, setoff, turnsFromZero, division, push: { from, to } };
  });
};

/** Clearances and contacts of one side's settings, on the solids. */
const solidsOn = (q: Question, found: StripFound, side: Side): Result<readonly CheckResult[]> => {
  const settings = q.plan.settings.filter((setting) => setting.side === side);
  const onBlade = [...q.onBlade, ...placedOnBlade(stripItems(found, side))];
  return chain(stripSetUpsOf({ ...q, onBlade }, settings), (setUps) =>
    ok(
      answerAll(setUps).map((check) => ({
        ...check,
        id: `strip/${check.id}/${side}`,
        label: words.labels.strip(check.label, text.virtual.side[side]),
        fix: check.passed || check.kind === 'contact' ? check.fix : words.fix.clear,
      })),
    ),
  );
};

/**
 * The rest rebuilt for a blade's strip: the rounded step in place of the straight one, the strip on
 * the blade's far face, the settings that the virtual grind found, and all of it checked on the
 * solids in the poses of that grind. What the strip does not change (mounting, hand, platen) is
 * checked with the straight step.
 */
export const stripKit = (
  q: Question,
  input: SpineRestInput,
  blade: Question['design']['blades'][number],
  found: StripFound,
  wish: StripWish,
  places: Places,
): Result<StripKit> => {
  const { cure } = found;
  return chain(stripParts(q.context, { found, wish }), (made) => {
    const plan = planWithStrip(blade, input, q.plan, cure);
    const pads = mainPads(
      q.plan,
      q.design.blades.map(({ name }) => name),
      q.v,
    );
    const pad = pads.find((one) => one.blade === blade.name)?.height ?? NaN;
    const poses: Poses = (setting, name) => (name === blade.name ? found.poses(setting) : []);
    const exchanged = made.map((part) =>
      part.id === ROUNDED_STEP ? { ...part, notes: [words.notes.instead, ...part.notes] } : part,
    );
    const parts = withTight(exchanged, tightOf(q.design, q.v, q.context, q.plan));
    const standing = places(plan, poses);
    const asked: Question = {
      ...q,
      design: { ...q.design, blades: [blade] },
      plan,
      poses,
      parts: [...q.parts.filter(({ id }) => id !== 'step'), ...parts],
      place: (setting) => standing(setting).map(onRoundedStep),
    };
    return chain(all(cure.sides.map(({ side }) => solidsOn(asked, found, side))), (solids) =>
      ok({
        parts,
        settings: settingsWith(plan),
        checks: [
          ...stripNumbers(asked, found, wish, pad),
          ...solids.flat(),
          ...fabricationChecks(parts, q.design.making.prints.nozzle, q.workshop),
        ],
      }),
    );
  });
};
