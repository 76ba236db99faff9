import type { Design, Result, SpineRestPlan } from '../../src/family/index.ts';
import { contextFrom } from '../shared/context-of.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import type { Context } from '../shared/parts/context.ts';
import type { Stand } from '../shared/site.ts';
import { needsOf } from './needs-of.ts';
import { leastOver } from './over-places.ts';
import type { Values } from './parameters.ts';

/** Lowest height over the seat at which any spine touches the step, mm. */
export const lowestStepContact = ({ settings }: SpineRestPlan): number =>
  leastOver(settings, ({ seating }) => seating.step[1]);

/** Everything that parts and placements are drawn from. `stands`: one for each pass; `swing`: see `needsOf`. */
export const contextOf = (
  design: Design,
  v: Values,
  plan: SpineRestPlan,
  stands: readonly Stand[],
  swing?: number,
): Result<Context> =>
  contextFrom({
    design,
    v,
    needs: needsOf(design, v, plan, stands, swing),
    offset: shiftsOf(stands).middle,
    lean: plan.lean,
    stepContact: lowestStepContact(plan),
  });
