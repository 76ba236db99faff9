import type { Side } from '../../blade/schema.ts';
import type { Certainty } from '../../core/certainty.ts';
import type { Frame } from '../../geometry/frame.ts';
import type { Unit } from '../../core/parameter.ts';
import type { Part, PlatePart } from '../../model/part.ts';
import type { Strip } from '../hold/strip.ts';
import type { EdgePlace, LinePlace } from '../measure/report.ts';
import type { VirtualGrind, VirtualInput, VirtualPass } from '../types.ts';

/** What the geometry of a strip comes to, mm. */
export interface Measures {
  /** Least distance of the near spine corner from the belt along the seat. */
  readonly corner: number;
  /** Greatest height at which the strip meets the step. */
  readonly contact: number;
  /** Most the blade yaws from the stroke while it beds on the belt, degrees. */
  readonly yaw: number;
  /** Radius of its sharpest hollow, and where; Infinity for a strip that nowhere is hollow. */
  readonly hollow: { readonly radius: number; readonly u: number };
  /** Least flat flank that the far bevel leaves beside the strip, what it needs, and where. */
  readonly flank: { readonly has: number; readonly needs: number; readonly u: number };
}

/** What a maker asks of a strip; mm. */
export interface StripWish {
  /** Most a grind line may leave the wanted one. */
  readonly allowed: number;
  /** Least thickness of the strip as made. */
  readonly least: number;
  /** Its height across the blade: the layer that is cut or printed. */
  readonly height: number;
  /** Radius of the rounded step it bears on. */
  readonly stepRadius: number;
  /**
   * Whether the step stays before the belt's middle, so that one step serves both sides; the stroke
   * then ends with the strip. Otherwise it stands nearer to the plunge, on either side its own way.
   */
  readonly centred: boolean;
  /** Thickness of what it is stuck on with. */
  readonly tape: number;
  /** Least length over which the spine must bear on the nose's top, square to the belt. */
  readonly bearing: number;
  readonly make: StripMaking;
}

/** How the strip is made; density in g/cm^3. */
export type StripMaking =
  | {
      readonly kind: 'plate';
      readonly process: PlatePart['process'];
      readonly material: string;
      readonly density: number;
    }
  | { readonly kind: 'print'; readonly material: string; readonly density: number };

export interface CureInput {
  /** The passes as they would be without the strip: spine rest, wide step. */
  readonly virtual: VirtualInput;
  readonly wish: StripWish;
  /** Tilt at each pass where bevels are promised, by its id, degrees; see `tiltsOf`. */
  readonly tilts: ReadonlyMap<string, number>;
}

/** The strip of one side and what it makes of the line. */
export interface SideStrip {
  /** The side that is ground; the strip sits on the other face. */
  readonly side: Side;
  readonly strip: Strip;
  /** Thickness of strip and tape along the blade: what stands between flank and step, mm. */
  readonly profile: readonly { readonly u: number; readonly thickness: number }[];
  /** Setoff of the last belt with the strip on the rounded step, mm. */
  readonly setoff: number;
  /** Greatest deviation of the line that counts, mm. */
  readonly with: number;
  readonly lines: readonly LinePlace[];
  readonly part: Part;
  /** From the part to the blade (u, v, w), where it sits while this side is ground. */
  readonly frame: Frame;
  readonly measures: Measures;
}

/** The same beside what the line is without a strip. */
export interface SideCure extends SideStrip {
  /** Greatest deviation of the line that counts on the straight step, mm. */
  readonly without: number;
}

export interface CureFact {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: Unit;
  readonly certainty: Certainty;
}

/** Strips that hold the line, proved on every belt. */
export interface Proved<S extends SideStrip = SideStrip> {
  readonly sides: readonly S[];
  /** Whether one strip, turned over, serves both sides. */
  readonly oneForBoth: boolean;
  /** Every belt with the strip: the same order, edges and steepness, each at a setoff of its own. */
  readonly passes: readonly VirtualPass[];
  /** The blade ground with the strip. */
  readonly cured: VirtualGrind;
  readonly edge: readonly EdgePlace[];
}

export interface Cure extends Proved<SideCure> {
  readonly facts: readonly CureFact[];
}
