import type { Blade, Side } from '../blade/schema.ts';
import type { Grinder } from '../grinder/schema.ts';
import type { Start, VirtualInput } from './types.ts';

/** What the section model of a plan has at one place of a grind line; mm over the edge. */
export interface ModelPoint {
  readonly u: number;
  readonly bevelHeight: number;
  readonly wanted: number;
  /** Metal it leaves over the stop at the edge on this side. */
  readonly leftStanding: number;
  /** Whether the place has a say in the plan's settings. */
  readonly steers: boolean;
}

/** One blade of a planned family, ready to be ground virtually. */
export interface VirtualJob extends Omit<VirtualInput, 'resolution'> {
  /** Edge thickness wanted in the end, both sides together, mm. */
  readonly edge: number;
  /** Length of seat that the spine stands on along the stroke, mm; 0 where it stands on none. */
  readonly seat: number;
  /** Whether a backing gives way, which is left out. */
  readonly soft: boolean;
  /** Grind lines of the section model. */
  readonly model: readonly { readonly side: Side; readonly places: readonly ModelPoint[] }[];
}

/** Angle of a side's finished bevel at places along the blade, degrees. */
export interface BevelAngles {
  readonly side: Side;
  readonly places: readonly { readonly u: number; readonly angle: number }[];
}

/**
 * A blade as it comes from heat treatment: its bevels taken to lie parallel to the finished ones of
 * the plan, as the plan takes them (an estimate: it bears on the first belts' volume alone).
 */
export const groundStart = (blade: Blade, bevels: readonly BevelAngles[]): Start => {
  const angleOf = (side: Side): ((u: number) => number) | undefined => {
    const places = bevels.find((one) => one.side === side)?.places ?? [];
    if (places.length === 0) return undefined;
    return (u) => {
      const after = places.findIndex((place) => place.u >= u);
      const right = places[after < 0 ? places.length - 1 : after];
      const left = after > 0 ? places[after - 1] : right;
      if (left === undefined || right === undefined) return 0;
      const k = right.u > left.u ? (u - left.u) / (right.u - left.u) : 0;
      return left.angle + k * (right.angle - left.angle);
    };
  };
  if (blade.edge.asHeatTreated >= Math.max(...blade.thickness.map(({ t }) => t)))
    return { kind: 'bar' };
  return {
    kind: 'ground',
    angle: { left: angleOf('left'), right: angleOf('right') },
    edge: blade.edge.asHeatTreated,
  };
};

/** Whether any of the backings in use gives way under the blade. */
export const givesWay = (
  { backings }: Grinder,
  sequence: readonly { readonly backing: string }[],
): boolean =>
  sequence.some(({ backing: id }) => {
    const kind = backings.find((backing) => backing.id === id)?.kind;
    return kind === 'leather' || kind === 'rubber';
  });
