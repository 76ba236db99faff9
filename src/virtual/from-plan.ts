import type { Blade, Side } from '../blade/schema.ts';
import { bladeLength } from '../blade/shape.ts';
import type { SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
import { strokeOf } from '../grind/spine-rest/windows.ts';
import { supportRadius } from '../grinder/belt-path.ts';
import type { Backing, Grinder } from '../grinder/schema.ts';
import type { SpineRestBody } from './hold/spine-settle.ts';
import { flatSurface, radiusedSurface, type Surface } from './surface.ts';
import type { Start, SpineRestPass } from './types.ts';

/**
 * The abrasive face of a platen with its backing, the belt's thickness included, over a seat that
 * stands `stack` mm above the rest. Leather and rubber are taken as rigid.
 */
export const platenSurface = (
  grinder: Grinder,
  backing: Backing,
  beltThickness: number,
  stack: number,
): Surface => {
  const { lean, platen } = grinder;
  const radius = supportRadius(grinder, backing);
  if (radius === undefined || platen.kind === 'none') return flatSurface(lean);
  return radiusedSurface(lean, radius + beltThickness, (platen.bottom + platen.top) / 2 - stack);
};

/** The passes of one blade, from the settings that were planned for its family. */
export const passesOf = (
  blade: Blade,
  { grinder, parameters, sequence }: SpineRestInput,
  plan: SpineRestPlan,
  body: SpineRestBody,
): SpineRestPass[] => {
  const length = bladeLength(blade.outline);
  const { plungeStop, tipOverlap, stackHeight } = parameters;
  return plan.settings.flatMap((setting): SpineRestPass[] => {
    const pass = sequence[setting.step - 1];
    const backing = grinder.backings.find(({ id }) => id === setting.backing);
    const belt = grinder.belts.find(({ id }) => id === setting.belt);
    const ground = setting.blades.some((at) => at.blade === blade.name && at.places.length > 0);
    if (pass === undefined || backing === undefined || belt === undefined || !ground) return [];
    return [
      {
        id: setting.id,
        side: setting.side,
        holding: { kind: 'spine-rest', body, setoff: setting.setoff },
        surface: platenSurface(grinder, backing, belt.thickness, stackHeight),
        edge: pass.edge,
        stroke: strokeOf(grinder.belt.width, length, plungeStop, tipOverlap),
      },
    ];
  });
};

/**
 * A blade as it comes from heat treatment: its bevels taken to lie parallel to the finished ones of
 * the plan, as the plan takes them (an estimate: it bears on the first belts' volume alone).
 */
export const startOf = (blade: Blade, plan: SpineRestPlan): Start => {
  const angleOf = (side: Side): ((u: number) => number) | undefined => {
    const last = plan.settings.filter((setting) => setting.side === side).at(-1);
    const places = last?.blades.find((at) => at.blade === blade.name)?.places ?? [];
    if (places.length === 0) return undefined;
    return (u) => {
      const after = places.findIndex((place) => place.u >= u);
      const right = places[after < 0 ? places.length - 1 : after];
      const left = after > 0 ? places[after - 1] : right;
      if (left === undefined || right === undefined) return 0;
      const k = right.u > left.u ? (u - left.u) / (right.u - left.u) : 0;
      return left.seating.angle + k * (right.seating.angle - left.seating.angle);
    };
  };
  return {
    kind: 'ground',
    angle: { left: angleOf('left'), right: angleOf('right') },
    edge: blade.edge.asHeatTreated,
  };
};
