import { bevelPlace } from '../blade/bevel.ts';
import { SIDES, type Blade } from '../blade/schema.ts';
import { bladeLength } from '../blade/shape.ts';
import type { SettledPlace, SpineRestInput, SpineRestPlan } from '../grind/spine-rest/types.ts';
import { strokeOf } from '../grind/spine-rest/windows.ts';
import { supportRadius } from '../grinder/belt-path.ts';
import type { Backing, Grinder } from '../grinder/schema.ts';
import type { SpineRestBody } from './hold/spine-settle.ts';
import { givesWay, groundStart, type VirtualJob } from './job.ts';
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

/** A blade as it comes to the plan's first belt; see `groundStart`. */
export const startOf = (blade: Blade, plan: SpineRestPlan): Start =>
  groundStart(
    blade,
    SIDES.map((side) => {
      const last = plan.settings.filter((setting) => setting.side === side).at(-1);
      const places = last?.blades.find((at) => at.blade === blade.name)?.places ?? [];
      return { side, places: places.map(({ u, seating: { angle } }) => ({ u, angle })) };
    }),
  );

/**
 * Tilt of a blade at every setting while the place where its bevels are promised is at the belt's
 * middle, by the id of the setting, degrees.
 */
export const tiltsOf = (
  blade: Blade,
  { grinder, parameters: { plungeStop, tipOverlap } }: SpineRestInput,
  { settings }: SpineRestPlan,
): ReadonlyMap<string, number> => {
  const { width } = grinder.belt;
  const { from } = strokeOf(width, bladeLength(blade.outline), plungeStop, tipOverlap);
  const promised = Math.max(bevelPlace(blade), from);
  const off = ({ u }: SettledPlace): number => Math.abs(u - promised);
  return new Map(
    settings.flatMap(({ id, blades }) => {
      const places = blades.find((at) => at.blade === blade.name)?.places ?? [];
      const [nearest] = [...places].sort((p, q) => off(p) - off(q));
      return nearest ? [[id, nearest.strokeTilt] as const] : [];
    }),
  );
};

/** One blade of a spine rest's plan, ready to be ground virtually. */
export const spineRestJob = (
  blade: Blade,
  input: SpineRestInput,
  plan: SpineRestPlan,
  body: SpineRestBody,
): VirtualJob => ({
  blade,
  passes: passesOf(blade, input, plan, body),
  start: startOf(blade, plan),
  edge: input.sequence.at(-1)?.edge ?? blade.edge.wanted,
  seat: 2 * body.noseHalf,
  soft: givesWay(input.grinder, input.sequence),
  model: plan.lines.filter((line) => line.blade === blade.name),
});
