import { text, type SpineRestPlan, type Design } from '../../src/family/index.ts';
import type { Context } from '../shared/parts/context.ts';
import { guideTight, singledOut, turnOver, yawGain, type Tight } from '../shared/tight.ts';
import { budgetQuestion } from './budget.ts';
import type { Values } from './parameters.ts';

const words = text.family.spineRest.parts.tight;
const shared = text.family.shared.tight;

/**
 * What the tolerance budget singles out. The front of the step is the setoff; a front that is not
 * square, or a guide with play, turns it; a seat that is not flat lifts the spine and leans it.
 */
export const tightOf = (design: Design, v: Values, { l }: Context, plan: SpineRestPlan): Tight => {
  const told = singledOut(budgetQuestion(design, v, l, plan));
  const { near } = told;
  const { width } = design.grinder.belt;
  const guide = guideTight({ v, l }, told, { yaw: yawGain(v, width) });
  return {
    step: [
      ...near(words.front, { step: 1 }),
      ...near(words.square, { yaw: width / 2 / (2 * l.slide.half) }),
      ...guide.slide,
    ],
    'step-rounded': guide.slide,
    nose: [
      ...near(shared.seat, { straightness: 1, squareness: turnOver(l.nose.depth) }),
      shared.stop,
    ],
    base: guide.pins,
    packer: guide.pins,
    'setting-gauge': near(words.gauge, { step: 1 }),
  };
};
