import type { Blade } from '../blade/schema.ts';
import { bladeLength } from '../blade/shape.ts';
import type { CarriageInput, CarriagePlan } from '../grind/carriage/types.ts';
import { strokeOf } from '../grind/spine-rest/windows.ts';
import { platenSurface } from './from-plan.ts';
import { givesWay, groundStart, type VirtualJob } from './job.ts';
import type { CarriageHolding, VirtualPass } from './types.ts';

/**
 * The passes of one blade on a guided-angle carriage, a pass for every way it is clamped. The base
 * of the carriage is the seat: heights of edges count from it.
 */
export const carriagePassesOf = (
  blade: Blade,
  { grinder, parameters, sequence }: CarriageInput,
  plan: CarriagePlan,
): VirtualPass<CarriageHolding>[] => {
  const length = bladeLength(blade.outline);
  const { plungeStop, tipOverlap, edgeHeight } = parameters;
  return plan.settings.flatMap((setting): VirtualPass<CarriageHolding>[] => {
    const pass = sequence[setting.step - 1];
    const backing = grinder.backings.find(({ id }) => id === setting.backing);
    const belt = grinder.belts.find(({ id }) => id === setting.belt);
    const clamping = setting.clamping.find((way) => way.blade === blade.name);
    if (!pass || !backing || !belt || !clamping) return [];
    const { id, side, angle } = setting;
    const { u: place, turn } = clamping;
    return [
      {
        id,
        side,
        holding: { kind: 'carriage', angle, place, turn, edgeHeight },
        surface: platenSurface(grinder, backing, belt.thickness, 0),
        edge: pass.edge,
        stroke: strokeOf(grinder.belt.width, length, plungeStop, tipOverlap),
      },
    ];
  });
};

/** One blade of a carriage's plan, ready to be ground virtually. */
export const carriageJob = (
  blade: Blade,
  input: CarriageInput,
  plan: CarriagePlan,
): VirtualJob => ({
  blade,
  passes: carriagePassesOf(blade, input, plan),
  start: groundStart(
    blade,
    plan.lines.filter((line) => line.blade === blade.name),
  ),
  edge: input.sequence.at(-1)?.edge ?? blade.edge.wanted,
  seat: 0,
  soft: givesWay(input.grinder, input.sequence),
  model: plan.lines.filter((line) => line.blade === blade.name),
});
