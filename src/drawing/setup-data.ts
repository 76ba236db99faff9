import type { Section } from './belt-section.ts';

/** What a set-up sheet tells: plain values, worded and formatted by the sheet. */
export interface SetupData {
  /** The fixture, e.g. "Spine-referenced rest". */
  readonly title: string;
  /** What the sheet holds for, and what is set once for all belts. */
  readonly once: readonly Fact[];
  /** Further numbers of fixture, belts and blades. */
  readonly facts: readonly Fact[];
  readonly settings: SettingsTable;
  /** What belongs to single passes, each with the numbers of those. */
  readonly notes: readonly string[];
  /** Whether what is set and measured is told in inches too. */
  readonly inches?: boolean;
  /** The set-up at the belt, and the first blade from its side, readings by their letters. */
  readonly pictures: { readonly section: Section; readonly blade?: Section };
  /** What should come of the passes on blades after the first: in the annex. */
  readonly others: readonly OtherBlade[];
  /** The blades as they were entered, to measure one's own against. */
  readonly bladeRows: readonly BladeRow[];
  /** What the progress tables are told of, in a sentence. */
  readonly progressBlade?: string;
  readonly progress: readonly Progress[];
  /** Zeroing, step by step. */
  readonly zeroing: readonly string[];
  /** What to measure before the fixture is trusted; each gets a place for the reading. */
  readonly measure: readonly string[];
  /** Cautions of this fixture, before the general ones. */
  readonly cautions: readonly string[];
  /** What errors do to the bevel; empty where no budget can be drawn up. */
  readonly budget: readonly BudgetRow[];
  /** Computed checks and what came of them, in words. */
  readonly checks: readonly Fact[];
  /** What columns and notes are called, by what is ground. */
  readonly terms: SetupTerms;
}

/** Words of the tables that depend on what is ground. */
export interface SetupTerms {
  readonly stopAt: string;
  readonly settingsNote: string;
  /** Where a dial leads that is turned in: "towards the belt"; none where nothing is dialled. */
  readonly turnsIn?: string;
  readonly expectedTitle: string;
  readonly progressNote: string;
  readonly progress: readonly [string, string, string];
  readonly perTenth: (change: string) => string;
}

/** One line of the tolerance budget, in words and numbers with their units. */
export interface BudgetRow {
  readonly what: string;
  /** Root of the sum of squares; the worst case. */
  readonly spread: string;
  readonly worst: string;
  /** The three that do most, and what halving the first would leave. */
  readonly most: string;
  readonly halved: string;
}

export interface Fact {
  readonly name: string;
  readonly value: string;
}

/** Belt by belt, what is set and what should come of it. */
export interface SettingsTable {
  /** Name and unit of each value that is set, e.g. "Step to belt, mm". */
  readonly names: readonly string[];
  /** Of each name, whether its values are lengths. */
  readonly lengths: readonly boolean[];
  /** The same of what follows from these: in the annex. */
  readonly derived: readonly string[];
  /** The blade that the bevel heights are told of. */
  readonly blade: string;
  /** The places where bevel heights are compared, e.g. "heel, 20": its name, and how far it is from the plunge, mm. */
  readonly places: readonly string[];
  readonly rows: readonly SettingRow[];
}

/** A blade after the first, from its side, and what is expected of it. */
export interface OtherBlade {
  readonly blade: string;
  readonly picture: Section;
  readonly places: readonly string[];
  /** For every pass the bevel height at each place, mm. */
  readonly bevels: readonly (readonly number[])[];
}

/** A blade before grinding, in words and numbers: at each place, and what holds all along. */
export interface BladeRow {
  readonly blade: string;
  readonly places: readonly {
    readonly place: string;
    readonly thickness: string;
    readonly height: string;
  }[];
  /** Edge thickness as it comes and as wanted, radius of the spine's corners, and both bevels. */
  readonly edge: string;
  readonly spine: string;
  readonly bevels: string;
}

export interface SettingRow {
  readonly belt: string;
  readonly side: string;
  /** Edge thickness, or what the terms of the sheet say, at which to stop, mm. */
  readonly stopAt: number;
  /** One for each name, mm or degrees. */
  readonly values: readonly number[];
  readonly derived: readonly number[];
  /** From the setting before: "1 turn + 12". */
  readonly turns: string;
  readonly reading: string;
  /** Expected bevel height at each place, mm. */
  readonly bevels: readonly number[];
  /** Metal that comes off this side of that blade, mm3. */
  readonly volume: number;
}

/** How the bevel grows at one setting while the edge gets thinner. */
export interface Progress {
  readonly title: string;
  /**
   * Edge thickness (mm), bevel angle a side (degrees) and bevel height (mm), or what the terms of
   * the sheet say.
   */
  readonly rows: readonly (readonly [number, number, number])[];
  /** Change of bevel height for 0.1 mm less at the edge, mm. */
  readonly perTenth: number;
}
