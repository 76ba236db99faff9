/**
 * The engine's one entry: open a design, solve it, check it, make its package. Everything is
 * plain data and pure functions; millimetres and degrees throughout. See tests/examples for each
 * of them at work.
 */
export type { Issue, Severity } from './core/issue.ts';
export { chain, fail, ok, type Result } from './core/result.ts';
export type { Certainty } from './core/certainty.ts';
export type { Parameter } from './core/parameter.ts';

export type { Blade } from './blade/schema.ts';
export type { Grinder } from './grinder/schema.ts';
export type { Design } from './document/schema.ts';
export { grinderPresets } from './grinder/presets/index.ts';
export { checkDesign as validateDesign, openDesign, openGrinder } from './document/open.ts';
export { saveDesign, saveGrinder } from './document/save.ts';
export { linkFragment, openLink } from './document/link.ts';

export type {
  BeltSection,
  BladePose,
  Fact,
  Family,
  Fixture,
  GrindLine,
  Measured,
  Reading,
  Registry,
  Setting,
} from './family/family.ts';
export type { CheckResult } from './check/result.ts';
export type { Part, Placement } from './model/part.ts';
export { registry } from '../jigs/registry.ts';

export { checkDesign, checkFixture, solveDesign, type Checked } from './make/engine.ts';
export { makePackage, CHECKS_FAILED, type PackageOptions } from './make/package.ts';
export {
  reportOf,
  solutionOf,
  verdictOf,
  type Report,
  type Solution,
  type Verdict,
} from './make/report.ts';
export { extractDesign, readPackage, zipPackage, type PackageFile } from './export/index.ts';
