import type { CheckResult } from '../check/result.ts';
import type { Design } from '../document/schema.ts';
import { carried } from '../export/carry.ts';
import type { Fact, Fixture, GrindLine, Setting } from '../family/index.ts';
import { massOf } from '../model/measure.ts';
import type { Part } from '../model/part.ts';
import { dialRanges, type DialRange } from './free-range/dials.ts';
import type { NumberRange } from './free-range/numbers.ts';

/** What `solve` answers: the numbers of a design, before anything is built. */
export interface Solution {
  readonly format: 'platenwright-solution';
  readonly design: string;
  readonly family: string;
  readonly settings: readonly Setting[];
  readonly lines: readonly GrindLine[];
  readonly facts: readonly Fact[];
}

/** What `check` answers. */
export interface Verdict {
  readonly format: 'platenwright-checks';
  readonly design: string;
  readonly passed: boolean;
  readonly checks: readonly CheckResult[];
  readonly dials: readonly DialRange[];
  /** Only where it was asked for: it takes many solutions. */
  readonly numbers?: readonly NumberRange[];
}

/** A part as the report lists it. */
export interface ReportPart {
  readonly id: string;
  readonly kind: Part['kind'];
  readonly name: string;
  readonly quantity: number;
  readonly material: string;
  /** Standard designation of bought hardware and of stock; empty for plates and prints. */
  readonly designation: string;
  /** Grams, one piece. */
  readonly mass: number;
}

/** `report.json`: settings, grind lines, checks and parts of one package. */
export interface Report {
  readonly format: 'platenwright-report';
  readonly design: string;
  readonly revision: number;
  readonly family: string;
  readonly passed: boolean;
  readonly settings: readonly Setting[];
  readonly lines: readonly GrindLine[];
  readonly facts: readonly Fact[];
  readonly checks: readonly CheckResult[];
  readonly dials: readonly DialRange[];
  readonly parts: readonly ReportPart[];
  /** The design it was made from, as every file carries it: the report opens again. */
  readonly carried: string;
}

export const solutionOf = (design: Design, fixture: Fixture): Solution => ({
  format: 'platenwright-solution',
  design: design.name,
  family: design.fixture.family,
  settings: fixture.settings,
  lines: fixture.lines,
  facts: fixture.facts,
});

/** Whether a set of checks was run and all of it passed. */
export const allPassed = (checks: readonly CheckResult[]): boolean =>
  checks.length > 0 && checks.every((check) => check.passed);

export const verdictOf = (
  design: Design,
  fixture: Fixture,
  checks: readonly CheckResult[],
): Verdict => ({
  format: 'platenwright-checks',
  design: design.name,
  passed: allPassed(checks),
  checks,
  dials: dialRanges(fixture, checks),
});

const designationOf = (part: Part): string => {
  if (part.kind === 'hardware') return part.designation;
  return part.kind === 'stock' ? part.section : '';
};

export const reportOf = (
  design: Design,
  fixture: Fixture,
  parts: readonly Part[],
  checks: readonly CheckResult[],
  carry: string,
): Report => ({
  format: 'platenwright-report',
  design: design.name,
  revision: design.revision,
  family: design.fixture.family,
  passed: allPassed(checks),
  settings: fixture.settings,
  lines: fixture.lines,
  facts: fixture.facts,
  checks,
  dials: dialRanges(fixture, checks),
  parts: parts.map((part) => ({
    id: part.id,
    kind: part.kind,
    name: part.name,
    quantity: part.quantity,
    material: part.material,
    designation: designationOf(part),
    mass: massOf(part),
  })),
  carried: carried(carry),
});
