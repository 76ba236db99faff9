/** A range of lengths, mm. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/**
 * What blades, grinder and plan ask of the mechanics: numbers only, seat frame. The base stands
 * still on the rest; the abrasive face comes forward with belt and backing, so in the seat frame
 * the base is shifted back and forth about its mean place.
 */
export interface Needs {
  readonly beltHalf: number;
  /** Lean of the platen, degrees, top away from the maker positive. */
  readonly lean: number;
  /** Shift of the base along y, over belts and backings: its ends are of equal size. */
  readonly shift: Range;
  /** Setoff of the step over all passes, and the same as a place on the base. */
  readonly setoff: Range;
  readonly onBase: Range;
  /** Height of the highest edge over the seat. */
  readonly edgeTop: number;
  /** Where the pad touches the blade: height over the seat. */
  readonly pad: number;
  /** Further pads for lower or higher places, heights over the seat. */
  readonly otherPads?: readonly number[];
  /** What stands behind the plunge where the stop collar sits, over all blades. */
  readonly behind: {
    /** From the spine line: top side and edge side of ricasso or tang, v. */
    readonly from: number;
    readonly to: number;
    readonly thickness: number;
  };
  /** How blades stand at the plunge stop. */
  readonly stop: {
    /** Of each blade's u axis against the seat, degrees; tip raised positive. */
    readonly slopes: readonly number[];
    /** Tilts, degrees, and heights of the blade's middle over the seat, mm, of all settings. */
    readonly stands: readonly { readonly tilt: number; readonly rise: number }[];
  };
  /** Setoff of the last pass, for the printed gauge. */
  readonly lastSetoff: number;
  /** How far behind the abrasive face a blade swings that no step squares; 0 when left out. */
  readonly swing?: number;
}

export const span = ({ min, max }: Range): number => max - min;
export const middle = ({ min, max }: Range): number => (min + max) / 2;
