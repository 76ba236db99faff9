import type { CheckResult, Gaps } from '../check/result.ts';
import type { Workshop } from '../check/workshop.ts';
import type { Issue } from '../core/issue.ts';
import { fail, ok, chain, type Result } from '../core/result.ts';
import type { Design, Making } from '../document/schema.ts';
import { calibrated, type Fixture, type Registry } from '../family/index.ts';
import type { Part } from '../model/part.ts';
import { text } from '../text/index.ts';
import { failedCheck, violations } from './fabrication.ts';

/** A design solved, built and checked. */
export interface Checked {
  readonly fixture: Fixture;
  readonly parts: readonly Part[];
  readonly checks: readonly CheckResult[];
}

/** Solves a valid design with its fixture family. */
export const solveDesign = (
  design: Design,
  registry: Registry,
  workshop?: Workshop,
): Result<Fixture> => {
  const family = registry.families[design.fixture.family];
  if (!family) {
    const known = Object.keys(registry.families).join(', ');
    const issue: Issue = {
      code: 'family-unknown',
      severity: 'error',
      path: 'fixture.family',
      ...text.make.unknownFamily(design.fixture.family, known),
    };
    return fail(issue);
  }
  return chain(family.solve(design, workshop), (fixture) =>
    ok(calibrated(fixture, design.fixture)),
  );
};

/**
 * Builds the parts of a solved fixture and runs every check on them. What the ways of making it
 * cannot make is a failed check; what they make badly comes as a warning or note.
 */
export const checkFixture = (
  fixture: Fixture,
  making: Making,
  gaps: Gaps = 'all',
): Result<Checked> =>
  chain(fixture.parts(), (parts) =>
    chain(fixture.checks(gaps), (checks) => {
      const found = violations(parts, making);
      const failed = found.filter(({ severity }) => severity === 'error').map(failedCheck);
      const advice = found.filter(({ severity }) => severity !== 'error');
      return ok({ fixture, parts, checks: [...checks, ...failed] }, advice);
    }),
  );

/** Solves, builds and checks a valid design. */
export const checkDesign = (
  design: Design,
  registry: Registry,
  workshop?: Workshop,
): Result<Checked> =>
  chain(solveDesign(design, registry, workshop), (fixture) => checkFixture(fixture, design.making));
