import type { CarriageSet } from './carriage.ts';
import type { DialReading } from './correct.ts';
import type { EdgeRestSet } from './edge-rest.ts';
import type { SpineRestSet } from './spine-rest.ts';

/** What a fixture was set to, by its family. */
export type KnownSet =
  | ({ readonly kind: 'spine-rest' } & SpineRestSet)
  | ({ readonly kind: 'edge-rest' } & Omit<EdgeRestSet, 'faceOffset'>)
  | ({ readonly kind: 'carriage' } & CarriageSet);

/** A setting of the plan with its dial, before any correction. */
export interface KnownSetting {
  readonly id: string;
  readonly set: KnownSet;
  readonly dial: DialReading;
}

/** What a calibration has to know of a solved fixture. */
export interface KnownFixture {
  readonly settings: readonly KnownSetting[];
  /** How truly a setting is to be met, in the unit of the setting: half width. */
  readonly settingTolerance: number;
  /** Unit of setting and offset. */
  readonly unit: 'mm' | 'deg';
}

/** A set that stands `by` beyond what it says. */
export const movedSet = (set: KnownSet, by: number): KnownSet => {
  switch (set.kind) {
    case 'spine-rest':
      return { ...set, setoff: set.setoff + by };
    case 'edge-rest':
      return { ...set, lip: set.lip + by };
    case 'carriage':
      return { ...set, angle: set.angle + by };
  }
};
