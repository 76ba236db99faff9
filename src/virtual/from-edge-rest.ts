import { wantedOn } from '../blade/bevel.ts';
import type { Blade, Side } from '../blade/schema.ts';
import { bladeLength, shapeOf } from '../blade/shape.ts';
import type { EdgeRestInput, EdgeRestPlan } from '../grind/edge-rest/types.ts';
import { strokeOf } from '../grind/spine-rest/windows.ts';
import { wheelSurface } from './surface.ts';
import type { EdgeRestHolding, Start, VirtualPass } from './types.ts';

/** The passes of one blade on an edge rest before a wheel. */
export const edgeRestPassesOf = (
  blade: Blade,
  { grinder, parameters }: EdgeRestInput,
  plan: EdgeRestPlan,
): VirtualPass<EdgeRestHolding>[] => {
  const length = bladeLength(blade.outline);
  const { lip: kind, lipHeight, lipReach, plungeStop, tipOverlap } = parameters;
  const { width } = grinder.belt;
  return plan.settings
    .filter(({ blades }) => blades.some((at) => at.blade === blade.name))
    .map(({ id, side, wheel, lip, depth }) => ({
      id,
      side,
      holding: {
        kind: 'edge-rest',
        depth,
        body: {
          seatHalf: lipReach,
          lip,
          lipHeight,
          lipFrom: kind === 'pads' ? width / 2 : 0,
          lipTo: lipReach,
        },
      },
      surface: wheelSurface(wheel.radius, wheel.drop),
      edge: blade.edge.wanted,
      stroke: strokeOf(width, length, plungeStop, tipOverlap),
    }));
};

/** A blade as it comes to the wheel: its flat bevels ground down to the edge wanted. */
export const hollowStart = (blade: Blade): Start => {
  const shape = shapeOf(blade);
  const angleOf = (side: Side): ((u: number) => number) | undefined => {
    const bevel = blade.bevels[side];
    const angle = bevel.kind === 'hollow' ? bevel.angle : wantedOn(shape, side)?.angle;
    return angle === undefined ? undefined : () => angle;
  };
  return {
    kind: 'ground',
    angle: { left: angleOf('left'), right: angleOf('right') },
    edge: blade.edge.wanted,
  };
};
