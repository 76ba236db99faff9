import type {
  Asked,
  BladePose,
  Design,
  Frame,
  Part,
  Placement,
  Workshop,
} from '../../../src/family/index.ts';
import type { Grinding } from '../grinding.ts';
import type { Stand } from '../site.ts';
import type { AsItComes } from './blade-solids.ts';
import type { Stick } from './stick.ts';

/** The box in which the hand holds the push block, from the pad's tip (y) and the seat (z), mm. */
export interface Hand {
  readonly half: number;
  readonly y: readonly [front: number, back: number];
  readonly z: readonly [low: number, high: number];
}

/** Along y, mm, of the block and of its pad alone. */
export interface Pressed {
  readonly block: number;
  readonly pad: number;
}

/** A fixture whose blade is stroked, with what is asked about its bodies. */
export interface Stroked {
  readonly design: Design;
  readonly workshop: Workshop;
  readonly parts: readonly Part[];
  readonly place: (setting: string) => readonly Placement[];
  /** What the blade carries, in blade coordinates. */
  readonly onBlade: readonly Placement[];
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
  readonly settings: readonly (Grinding & { readonly belt: string; readonly backing: string })[];
  readonly stands: readonly Stand[];
  /** From the grinder to the seat frame, without lean. */
  readonly frameOf: (stand: Stand) => Frame;
  /** Name of the body a placement belongs to. */
  readonly bodyName: (placement: Placement) => string;
  /** The blade as it comes; the full blank unless stated. */
  readonly comes?: AsItComes;
  /** The push stick, which takes the place of the block near the tip. */
  readonly stick?: Stick;
  /** How far beyond its placement the block goes where it comes nearest to the belt at a setting. */
  readonly pressedBy: (setting: string) => Pressed;
  /** The block is held here; half length of what the blade is rocked over, and how far, degrees. */
  readonly hand: Hand;
  readonly rockHalf: number;
  readonly rocking: number;
  /** Names of all bodies for people. */
  readonly names: Readonly<Record<string, string>>;
  /** Asked once a stand; for every blade over stroke and rocking; over the stroke alone. */
  readonly machine: readonly Asked[];
  /** Asked once a stand, of what stands behind a blade that presses the belt on its support. */
  readonly pressing: readonly Asked[];
  readonly blade: readonly Asked[];
  readonly contacts: readonly Asked[];
}
