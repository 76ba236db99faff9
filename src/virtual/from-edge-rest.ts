import { wantedOn } from '../blade/bevel.ts';
import type { Blade, Side } from '../blade/schema.ts';
import { bladeLength, shapeOf } from '../blade/shape.ts';
import type { EdgeRestInput, EdgeRestPlan } from '../grind/edge-rest/types.ts';
import { strokeOf, type Stroke } from '../grind/spine-rest/windows.ts';
import { givesWay, type ModelPoint, type VirtualJob } from './job.ts';
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

/** What the section model has of a hollow's upper limit, along the midplane. */
const modelOf = ({ name }: Blade, { lines, settings }: EdgeRestPlan): VirtualJob['model'] =>
  lines
    .filter(({ blade }) => blade === name)
    .map(({ side, places }) => {
      const last = settings.findLast((setting) => setting.side === side);
      const cut = last?.blades.find(({ blade }) => blade === name)?.places ?? [];
      return {
        side,
        places: places.flatMap(({ u, deviation, guided }): ModelPoint[] => {
          const upper = cut.find((place) => place.u === u)?.limits.upper;
          if (upper === undefined) return [];
          const wanted = upper - deviation;
          return [{ u, bevelHeight: upper, wanted, leftStanding: 0, steers: guided }];
        }),
      };
    });

/** A stroke that ends where the lip no longer holds the edge on both sides of the belt. */
const guidedStroke = (stroke: Stroke, model: VirtualJob['model'], side: Side): Stroke => {
  const guided = (model.find((one) => one.side === side)?.places ?? []).flatMap(({ u, steers }) =>
    steers ? [u] : [],
  );
  const from = Math.max(stroke.from, Math.min(...guided));
  return { ...stroke, from, to: Math.max(from, Math.min(stroke.to, Math.max(...guided))) };
};

/**
 * One blade of an edge rest's plan, ready to be ground virtually: as far as its lip guides it. What
 * is beyond is finished by hand.
 */
export const edgeRestJob = (blade: Blade, input: EdgeRestInput, plan: EdgeRestPlan): VirtualJob => {
  const model = modelOf(blade, plan);
  return {
    blade,
    passes: edgeRestPassesOf(blade, input, plan).map((pass) => ({
      ...pass,
      stroke: guidedStroke(pass.stroke, model, pass.side),
    })),
    start: hollowStart(blade),
    edge: blade.edge.wanted,
    seat: 0,
    soft: givesWay(input.grinder, input.sequence),
    model,
  };
};
