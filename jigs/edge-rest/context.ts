import type { Context as Rig } from '../shared/parts/context.ts';
import type { Values } from './parameters.ts';
import type { WheelStand } from './site.ts';
import type { ZeroPin } from './zero-pin.ts';

/**
 * What the edge rest adds to the mechanics it shares, mm. The layout of the shared parts counts z
 * from the top of the nose; the seat frame of the edge rest lies `rise` higher.
 */
export interface Extra {
  readonly rise: number;
  /** Front of the nose: the gap from the wheel at the level of its top. */
  readonly noseFront: number;
  /** Farthest place of the pad's tip along y. */
  readonly foot: number;
  /** From the lip's face forward to the front of the lip slide. */
  readonly lead: number;
  /** Thickness of wear strip and lip under the seat. */
  readonly under: number;
  /** Half length of seat, lip slide and lip. */
  readonly half: number;
  /** The lip lies across the belt up to here, or from here outwards. */
  readonly lipEnd: number;
  readonly pads: boolean;
  /** Where lip screws stand along x. */
  readonly screws: readonly number[];
  readonly screwLength: number;
  readonly gauge: number | undefined;
  /** What the zero is taken with, and the lip there, one a stand. */
  readonly pin: ZeroPin;
  readonly zeros: readonly number[];
}

export interface EdgeContext {
  readonly v: Values;
  readonly rig: Rig;
  readonly x: Extra;
  readonly stands: readonly WheelStand[];
}
