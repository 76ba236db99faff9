import { text } from '../../src/family/index.ts';
import { singledOut, turnOver, type Tight } from '../shared/tight.ts';
import { budgetQuestion } from './budget.ts';
import type { Context } from './context.ts';

const words = text.family.carriage.parts.tight;

/**
 * What the tolerance budget singles out. A base that is not flat from foot to heel, or an upright
 * that is not, turns the blade; the upright moves its midplane as well; the fence is the setting.
 */
export const tightOf = (c: Context): Tight => {
  const { v, l } = c;
  const { near } = singledOut(budgetQuestion(c));
  const face = near(words.face, { clamp: 1, squareness: turnOver(l.earTop - l.soleTop) });
  return {
    base: near(words.base, { squareness: turnOver(v.length) }),
    fence: near(words.fence, { fence: 1 }),
    sole: near(words.length(v.length), { base: 1 }),
    upright: face,
    'upright-angle': face,
    'edge-gauge': near(words.edgeGauge, { height: 1 }),
    'fence-gauge': near(words.fenceGauge, { fence: 1 }),
  };
};
