import type { CheckResult } from '../check/result.ts';
import type { Issue } from '../core/issue.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import type { Design } from '../document/schema.ts';
import type { Registry } from '../family/index.ts';
import type { Grinder } from '../grinder/schema.ts';
import { checkFixture } from '../make/engine.ts';
import { text } from '../text/index.ts';
import { build, consequence, type Consequence } from './consequence.ts';
import { differences, type Difference } from './differences.ts';
import { firstBuilt, type Candidate } from './give-way.ts';
import { keptValues } from './kept-values.ts';
import { ontoBlades } from './onto-blades.ts';
import { ontoGrinder } from './onto-grinder.ts';

/** What a design is fitted to. */
export interface Target {
  readonly grinder?: Grinder;
  /** The design whose blades are to be ground. */
  readonly blades?: Design;
}

/** What adapting a design means, before anything is changed. */
export interface Adaptation extends Consequence {
  readonly format: 'platenwright-adaptation';
  readonly design: string;
  readonly grinder: string;
  /** Whether every check of the adapted fixture passed. */
  readonly passed: boolean;
  readonly differences: readonly Difference[];
  /** What had to give way: belts exchanged, parameters changed; and what is kept but may not hold. */
  readonly notes: readonly Issue[];
  /** Failed checks, each with what would mend it. */
  readonly failed: readonly CheckResult[];
  /** How many checks were run. */
  readonly checks: number;
}

/** The report, and the design it speaks of. */
export interface Adapted {
  readonly design: Design;
  readonly adaptation: Adaptation;
}

/** The most that a revision counts to in a file. */
const LAST_REVISION = 9999;

/**
 * Fits a design to another grinder, to other blades, or both: the adapted design and a report of
 * what it means. The fixture's parameters stay as they are wherever that can be built, so that
 * every part that can be kept is kept. Fails when the design, or no variant of it on the new
 * grinder, has a fixture.
 */
export const adapt = (design: Design, target: Target, registry: Registry): Result<Adapted> => {
  const mounted = target.grinder
    ? ontoGrinder(design, target.grinder)
    : { design, notes: [] as Issue[] };
  const bladed = target.blades
    ? ontoBlades(mounted.design, target.blades)
    : { design: mounted.design, notes: [] };
  const candidate: Candidate = {
    design: { ...bladed.design, revision: Math.min(design.revision + 1, LAST_REVISION) },
    notes: [...mounted.notes, ...bladed.notes],
  };
  const before = build(design, registry);
  // What stays of a fixture that there is not cannot be told: it is mended first.
  if (!before.ok)
    return fail(
      ...before.issues.map((issue) => ({
        ...issue,
        message: text.adapt.notes.asItIs(issue.message),
      })),
    );
  // Warnings of the design as it was are no part of the answer.
  return chain(firstBuilt(candidate, before.value, registry), (after) =>
    chain(checkFixture(after.built.fixture, after.design.making), ({ checks }) => {
      const failed = checks.filter(({ passed }) => !passed);
      const adaptation: Adaptation = {
        format: 'platenwright-adaptation',
        design: design.name,
        grinder: after.design.grinder.name,
        passed: checks.length > 0 && failed.length === 0,
        differences: differences(design, after.design, registry),
        notes: [...after.notes, ...keptValues(design.grinder, after.design, registry)],
        ...consequence(before.value, after.built),
        failed,
        checks: checks.length,
      };
      return ok({ design: after.design, adaptation });
    }),
  );
};
