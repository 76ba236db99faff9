import type { Certainty } from '../core/certainty.ts';
import type { Adapted, Target } from '../adapt/adapt.ts';
import type { Comparison } from '../adapt/compare.ts';
import type { Mended } from '../adapt/mend-all.ts';
import type { ReachTable } from '../adapt/reach.ts';
import type { CheckResult } from '../check/result.ts';
import type { Issue } from '../core/issue.ts';
import type { Path } from '../core/path.ts';
import type { Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { Grinder } from '../grinder/schema.ts';
import type { Frame } from '../geometry/frame.ts';
import type { Placement } from '../model/part.ts';
import type { DialRange } from '../make/free-range/dials.ts';
import type { NumberRange } from '../make/free-range/numbers.ts';
import type { Suit } from '../make/suit/suit.ts';
import type { PackageFile } from '../export/package.ts';
import type { Budget } from '../setup/budget/budget.ts';
import type { BladeMap, CureFact, MapValue } from '../virtual/index.ts';
import type { BeltSection, Fact, FamilyCard, GrindLine, Setting } from '../family/family.ts';
import type { Blade, Side } from '../blade/schema.ts';
import type { Calibrated } from '../make/calibrate.ts';
import type { Readings } from '../setup/readings/schema.ts';
import type { Contour } from '../outline/clean.ts';
import type { Preview } from './checking.ts';
import type { OutlineChoice } from '../outline/lay.ts';
import type { OutlineFile } from '../outline/read.ts';
import type { Traced } from '../outline/trace.ts';

/** The numbers of a design: what `Fixture` holds, without its functions. */
export interface Solved {
  readonly settings: readonly Setting[];
  readonly lines: readonly GrindLine[];
  readonly facts: readonly Fact[];
  /** One section at the belt for each setting, by the setting's id. */
  readonly sections: Readonly<Record<string, BeltSection>>;
  /** What a test piece for it is ground as; null where it cannot be calibrated. */
  readonly testPiece: Readings['kind'] | null;
  readonly zeroing: readonly string[];
  readonly assembly: readonly string[];
  readonly cautions: readonly string[];
}

/** One part for the list. */
export interface PartCard {
  readonly id: string;
  readonly name: string;
  readonly kind: 'plate' | 'print' | 'stock' | 'hardware';
  readonly quantity: number;
  readonly material: string;
  readonly process: string;
  /** Grams each; null where it is not known. */
  readonly mass: number | null;
  /** What it measures over all, mm, the longest first; null for what is bought. */
  readonly size: readonly number[] | null;
  /** Contours of every layer from below, mm, part coordinates, flattened for the screen. */
  readonly layers: readonly {
    readonly outer: readonly Vec2[];
    readonly holes: readonly (readonly Vec2[])[];
  }[];
}

export interface Built {
  readonly parts: readonly PartCard[];
  /** What building and setting use up or need at hand, and is no part: the thing, and its use. */
  readonly supplies: readonly (readonly [what: string, use: string])[];
  readonly checks: readonly CheckResult[];
  /** How far what a reading moves may be shifted before a clearance can fail. */
  readonly dials: readonly DialRange[];
  /** Features that can be made but make trouble, as warnings and notes. */
  readonly advice: readonly Issue[];
}

/** A solid for the screen: single precision, shared corners. */
export interface SceneMesh {
  readonly vertices: Float32Array;
  readonly triangles: Uint32Array;
}

export interface ScenePart {
  readonly id: string;
  readonly name: string;
  readonly kind: PartCard['kind'];
  readonly mesh: SceneMesh;
}

export interface SceneBlade {
  readonly name: string;
  readonly blade: SceneMesh;
  readonly tang: SceneMesh;
}

/** Where everything stands at one setting, seat frame. */
export interface SceneSetting {
  /** Where the abrasive runs, (y, z), as in the section at the belt. */
  readonly belt: readonly Vec2[];
  readonly placements: readonly Pick<Placement, 'part' | 'name' | 'frame' | 'carrier'>[];
  /** Settled poses over the stroke, by the blade's name. */
  readonly poses: Readonly<
    Record<string, readonly { readonly u: number; readonly frame: Frame }[]>
  >;
}

/** The solids of a fixture and its blades. */
export interface Scene {
  readonly parts: readonly ScenePart[];
  readonly blades: readonly SceneBlade[];
  /** By the setting's id. */
  readonly settings: Readonly<Record<string, SceneSetting>>;
  /** The way along which the parts are put together. */
  readonly joined: 'x' | 'z';
  /** Width of the belt, mm. */
  readonly belt: { readonly width: number };
}

/** A ground blade at one moment. */
export interface GroundFrame {
  readonly label: string;
  readonly map: BladeMap;
}

/** One blade ground virtually: the blade as it comes and after every pass; lengths mm. */
export interface GroundCard {
  readonly blade: string;
  readonly shows: MapValue;
  readonly frames: readonly GroundFrame[];
  /** Most over the edge wanted, and thickest less thinnest edge, where places count. */
  readonly standing: { readonly u: number; readonly value: number };
  readonly uneven: number;
  /** Greatest deviation of each grind line, and where. */
  readonly lines: readonly { readonly side: Side; readonly u: number; readonly value: number }[];
  readonly certainty: Certainty;
  readonly assumptions: readonly string[];
  /** The same with the line strip; null where there is none, and the issues say why. */
  readonly cured: {
    readonly frames: readonly GroundFrame[];
    readonly standing: number;
    readonly uneven: number;
    readonly lines: readonly { readonly side: Side; readonly value: number }[];
    readonly facts: readonly CureFact[];
    /** The value of the design that makes the fixture for this strip; null where it is. */
    readonly choose: { readonly path: string; readonly value: string } | null;
  } | null;
  /** A step turned by half the taper, in a sentence; null without a step or a single taper. */
  readonly turned: string | null;
  readonly cureIssues: readonly Issue[];
}

/** The files of a package, and all of them as one archive. */
export interface Packed {
  readonly files: readonly PackageFile[];
  readonly archive: Uint8Array;
}

/** What the page asks of the engine. Every answer crosses as plain data. */
export interface Engine {
  families(): Promise<readonly FamilyCard[]>;
  /** Opens the bytes of a design file or of an exported file that carries its design. */
  open(bytes: Uint8Array): Promise<Result<Design>>;
  /**
   * Takes back a design that this program kept itself: one whose values contradict each other
   * is let in, so that half-done work is not lost; `solve` then names what is wrong.
   */
  restore(bytes: Uint8Array): Promise<Result<Design>>;
  /** The design as the fragment of a link, and back. */
  link(design: Design): Promise<string>;
  openLink(fragment: string): Promise<Result<Design>>;
  /** Opens the bytes of a grinder file. */
  openGrinder(bytes: Uint8Array): Promise<Result<Grinder>>;
  grinderText(grinder: Grinder): Promise<string>;
  /** The design file of a design. */
  text(design: Design): Promise<string>;
  /** Names of the worked examples, the one for a first visit in front. */
  examples(): Promise<readonly string[]>;
  /** The design file of an example, by its place in that list. */
  example(index: number): Promise<Uint8Array>;
  /** Everything that is wrong with a design as it stands, by path. */
  solve(design: Design): Promise<Result<Solved>>;
  /**
   * Parts and checks of the newest design asked about: null where a newer one came first. What is
   * found on the way is told; it is never a pass. All checks are told as soon as they are proved,
   * while gaps far beyond what is asked are still being measured.
   */
  build(
    design: Design,
    preview: (found: Preview) => void,
    proved: (built: Built) => void,
  ): Promise<Result<Built> | null>;
  /** The solids, for the picture on the bench. */
  scene(design: Design): Promise<Result<Scene>>;
  /** The tolerance budget, simulated with a fixed seed; null where the family draws up none. */
  budget(design: Design): Promise<Result<Budget | null>>;
  /** The blades as the belt leaves them; null where the family does not say how it holds them. */
  grind(
    design: Design,
    progress: (share: number) => void,
  ): Promise<Result<readonly GroundCard[] | null>>;
  /** Which fixture family suits the blades of a design, with work by hand beside them. */
  suit(design: Design): Promise<Result<Suit>>;
  /** What the fixture can grind as it is built; an issue where its family cannot say. */
  reach(design: Design): Promise<Result<ReachTable>>;
  /** How far the number at a path may move before a check fails; every value tried is checked. */
  range(design: Design, path: Path): Promise<Result<NumberRange>>;
  /** What fitting the design to another grinder or other blades means; nothing is changed. */
  adapt(design: Design, target: Target): Promise<Result<Adapted>>;
  /** What the second design states otherwise than the first, and what that means for the workshop. */
  compare(from: Design, to: Design): Promise<Result<Comparison>>;
  /** Every value set that is named as a mend; an issue where they do not mend it. */
  mendAll(design: Design): Promise<Result<Mended>>;
  /** Opens the bytes of a readings file. */
  openReadings(bytes: Uint8Array): Promise<Result<Readings>>;
  /** The true offset from the readings of a test piece, and the design that remembers it. */
  calibrate(design: Design, readings: Readings): Promise<Result<Calibrated>>;
  /** The contours in a DXF or SVG file. */
  outline(bytes: Uint8Array): Promise<Result<OutlineFile>>;
  /** One of them laid on the axes of a blade, and what the blade can hold of it. */
  trace(blade: Blade, contour: Contour, choice: OutlineChoice): Promise<Result<Traced>>;
  /**
   * The package of a design, the same bytes as the command line writes. With `acceptFailing` it
   * is written although checks failed, and every page names them.
   */
  pack(
    design: Design,
    acceptFailing: boolean,
    progress: (share: number) => void,
  ): Promise<Result<Packed>>;
}
