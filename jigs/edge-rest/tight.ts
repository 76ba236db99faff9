import { text, type Design, type EdgeRestPlan } from '../../src/family/index.ts';
import { guideTight, singledOut, yawGain, type Tight } from '../shared/tight.ts';
import { budgetQuestion } from './budget.ts';
import type { EdgeContext } from './context.ts';

const words = text.family.edgeRest.parts.tight;
const shared = text.family.shared.tight;

/** What a height of the lip gauge that is 1 mm off moves the lip by: the slope of the wheel there. */
const gaugeGain = ({ settings }: EdgeRestPlan, height: number): number => {
  const wheel = settings.at(-1)?.wheel;
  if (wheel === undefined) return 1;
  const over = wheel.drop - height;
  return Math.abs(over) / Math.sqrt(wheel.radius ** 2 - over ** 2);
};

/** What the tolerance budget singles out: the lip, what it stands against, the seat, the guide. */
export const tightOf = (design: Design, c: EdgeContext, plan: EdgeRestPlan): Tight => {
  const { v, rig, x } = c;
  const told = singledOut(budgetQuestion(c, plan));
  const { near } = told;
  const guide = guideTight(rig, told, { lip: yawGain(v, design.grinder.belt.width) });
  const lip = near(words.lip, { lip: 1 });
  return {
    'lip-slide': guide.slide,
    'lip-strip': lip,
    'lip-pad': lip,
    'wear-strip': [
      ...near(words.wearTop, { seatHeight: 1 }),
      ...near(words.wearFront, { lip: 1 }),
      shared.stop,
    ],
    base: guide.pins,
    packer: guide.pins,
    'lip-gauge': x.gauge === undefined ? [] : near(words.gauge, { lip: gaugeGain(plan, x.gauge) }),
  };
};
