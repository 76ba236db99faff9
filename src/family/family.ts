import type { Side } from '../blade/schema.ts';
import type { Certainty } from '../core/certainty.ts';
import type { Parameter, Unit } from '../core/parameter.ts';
import type { Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Vec2 } from '../geometry/vector.ts';
import type { GrindLine } from '../grind/line.ts';
import type { BladePose } from './blade-pose.ts';
import type { Reach } from './limit.ts';
import type { Part, Placement } from '../model/part.ts';
import type { CheckResult, Gaps } from '../check/result.ts';
import type { Solids } from '../check/set-up.ts';
import type { Workshop } from '../check/workshop.ts';
import type { Budget } from '../setup/budget/budget.ts';
import type { Simulating } from '../setup/budget/families.ts';
import type { KnownFixture } from '../setup/calibration/known.ts';
import type { text } from '../text/index.ts';
import type { VirtualGrinding } from './virtual.ts';

export type { BladePose } from './blade-pose.ts';
export type { Limit, Reach, ReachAxes, ReachAxis, ReachBox } from './limit.ts';

export type { Side } from '../blade/schema.ts';
export type { GrindLine } from '../grind/line.ts';

/** One number a maker sets on the fixture, with how the dial gets there. */
export interface Reading {
  /** Stable key for programs: "setoff"; "fromZero" for the way of the dial from its zero. */
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: Unit;
  /** Screw turns from the zero and from the setting before it; positive opens (away from the belt). */
  readonly dial?: {
    readonly turnsFromZero: number;
    readonly turnsFromLast: number;
    /** Whole divisions to read on the knob after the whole turns. */
    readonly division: number;
  };
}

/** One belt on one side: set this, grind until the edge measures that. */
export interface Setting {
  readonly id: string;
  /** Position in the sequence, from 1. */
  readonly step: number;
  readonly side: Side;
  readonly belt: string;
  readonly backing: string;
  /** Edge thickness to stop at, mm. */
  readonly edgeStop: number;
  readonly angle: number;
  readonly readings: readonly Reading[];
  /** What the calipers show on the way at this one setting. */
  readonly progress: readonly {
    readonly edge: number;
    readonly angle: number;
    readonly bevelHeight: number;
  }[];
  /** Where that is, mm from the plunge, if not at the place where the bevel is promised. */
  readonly progressAt?: number;
  /** Bevel heights to expect when the stop is reached. */
  readonly expected: readonly {
    readonly blade: string;
    readonly place: 'heel' | 'middle' | 'tip';
    readonly u: number;
    readonly bevelHeight: number;
  }[];
  /** Where the push must act above the seat, mm, and the step's force as a share of the push. */
  readonly push: {
    readonly from: number;
    readonly to: number;
    readonly stepForce: readonly [number, number];
  };
  /** Metal removed, mm3, per blade. */
  readonly volume: readonly { readonly blade: string; readonly value: number }[];
  readonly notes: readonly string[];
  /** A hollow is stopped at its depth, not at an edge thickness: what is found on the way, mm. */
  readonly hollow?: {
    readonly stop: number;
    readonly progress: readonly {
      readonly depth: number;
      readonly lower: number;
      readonly upper: number;
    }[];
  };
}

/** Words of a set-up sheet that depend on what is ground. */
export interface SheetTerms {
  readonly stopAt: string;
  readonly settingsNote: string;
  /** Where a dial leads that is turned in: "towards the belt"; none where nothing is dialled. */
  readonly turnsIn?: string;
  readonly expectedTitle: string;
  readonly progressNote: string;
  /** Heads of the three columns of a progress table. */
  readonly progress: readonly [string, string, string];
  readonly perTenth: (change: string) => string;
  readonly measure: readonly string[];
}

/** A named number worth printing. */
export interface Fact {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  readonly unit: Unit;
  readonly certainty: Certainty;
}

/** What the finished geometry, not the solver, says was ground. */
export interface Measured {
  readonly blade: string;
  readonly side: Side;
  readonly u: number;
  readonly angle: number;
  readonly bevelHeight: number;
  readonly edgeThickness: number;
  /** How far measurement and promise may differ, with the reason. */
  readonly certainty: Certainty;
}

/** A value of the design, by its path, as a dimension of the section. */
export interface SectionInput {
  readonly path: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly direction: 'horizontal' | 'vertical' | 'aligned';
  /** The spot it measures, where that lies away from `to`: a thin line leads there. */
  readonly marks?: Vec2;
}

/** A section of the set-up to draw: blade, belt, nose and step at one setting. */
export interface BeltSection {
  readonly title: string;
  readonly lines: readonly {
    readonly points: readonly Vec2[];
    readonly closed: boolean;
    readonly role: 'blade' | 'belt' | 'fixture' | 'grinder' | 'push';
    readonly label?: string;
  }[];
  readonly dimensions: readonly {
    readonly from: Vec2;
    readonly to: Vec2;
    readonly direction: 'horizontal' | 'vertical' | 'aligned';
    readonly text: string;
    /** Where in the design the value stands, when it is entered and not worked out. */
    readonly path?: string;
    /** Key of the reading that it shows: the set-up sheet letters both alike. */
    readonly reading?: string;
  }[];
  /** Entered values of the fixture with their place in the section; the printed drawing is without. */
  readonly inputs?: readonly SectionInput[];
}

/**
 * A solved fixture: every answer about one design. The numbers are there at once; parts,
 * placements and checks are computed when asked for.
 */
export interface Fixture {
  readonly settings: readonly Setting[];
  readonly lines: readonly GrindLine[];
  readonly facts: readonly Fact[];
  readonly parts: () => Result<readonly Part[]>;
  /** The assembly in the seat frame at a setting. */
  readonly place: (setting: string) => readonly Placement[];
  /** Settled poses over the stroke at a setting. */
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
  /** All of them; for one who drags a number with the `near` gaps only (default: 'all'). */
  readonly checks: (gaps?: Gaps) => Result<readonly CheckResult[]>;
  /** What the checks of solids look at, for those who test the checks. */
  readonly solids?: () => Result<Solids>;
  readonly measured: () => Result<readonly Measured[]>;
  readonly section: (setting: string) => BeltSection;
  /** Bodies, as the checks name them, that each reading shifts as one; by the reading's key. */
  readonly moves?: Readonly<Record<string, readonly string[]>>;
  /** Keys of readings that follow from the others: they stand in the annex of the set-up sheet. */
  readonly derived?: readonly string[];
  /** Readings along the blade, by their keys: which way from the plunge each is measured. */
  readonly alongBlade?: Readonly<Record<string, 'tang' | 'tip'>>;
  /** Upright planes, each through a placement, square to an axis, that show how it works inside. */
  readonly cuts?: readonly { readonly through: string; readonly across: 'x' | 'y' }[];
  /** The way along which its parts are put together, for the exploded view: z where absent. */
  readonly joined?: 'x' | 'z';
  /** What the readings of a test piece are compared with; absent where there is nothing to correct. */
  readonly known?: KnownFixture;
  /** Tolerance budget of the last settings; absent where none can be drawn up. */
  readonly budget?: (simulating: Simulating) => Result<Budget>;
  /** What it can grind besides the blades it was made for; absent where that cannot be stated. */
  readonly reach?: Reach;
  /** Why there is no reach to state, and what to ask instead. */
  readonly reachless?: { readonly message: string; readonly fix: string };
  /** The blades as the belt leaves them; absent where that cannot be computed. */
  readonly virtual?: VirtualGrinding;
  /** What the set-up sheet calls things where bevels by edge thickness are not what is ground. */
  readonly sheet?: SheetTerms;
  /** Steps of building and of finding zero, in order, as sentences. */
  readonly assembly: readonly string[];
  /** What building and setting use up or need at hand, and no drawing shows: the thing, and its use. */
  readonly supplies?: readonly (readonly [what: string, use: string])[];
  readonly zeroing: readonly string[];
  /** Cautions that this fixture adds to the usual ones. */
  readonly cautions: readonly string[];
}

/** What a family is called and asks for: enough to open a design and to draw its fields. */
export interface FamilyCard {
  readonly id: string;
  readonly label: string;
  readonly meaning: string;
  /** The word of the glossary whose picture shows how the fixture works. */
  readonly emblem: keyof typeof text.glossary;
  readonly parameters: Readonly<Record<string, Parameter>>;
  /** It helps another fixture or the hand, and holds no blade while it is ground. */
  readonly aids?: true;
}

/** Families that hold a blade in front of those that help them: the order in which they are listed. */
export const aidsLast = (a: FamilyCard, b: FamilyCard): number =>
  Number(a.aids === true) - Number(b.aids === true);

/** A fixture family: its card, and the way from a design to a solved fixture. */
export interface Family extends FamilyCard {
  /** Checks of the fixture keep what they build in the workshop, or in one of their own. */
  readonly solve: (design: Design, workshop?: Workshop) => Result<Fixture>;
}

export interface Registry {
  readonly families: Readonly<Record<string, Family>>;
}
