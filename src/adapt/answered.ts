import type { CheckResult } from '../check/result.ts';
import type { Workshop } from '../check/workshop.ts';
import { chain, ok, type Result } from '../core/result.ts';
import { checkDesign } from '../document/open.ts';
import type { Design } from '../document/schema.ts';
import type { Fixture, Registry } from '../family/index.ts';
import { checkFixture, solveDesign } from '../make/engine.ts';

/** A design of plain data with its answer. */
export const solved = (design: Design, registry: Registry, workshop: Workshop): Result<Fixture> =>
  chain(checkDesign(design, registry), (sound) => solveDesign(sound, registry, workshop));

/** What fails of a solved fixture. */
export const failedOf = (design: Design, fixture: Fixture): Result<readonly CheckResult[]> =>
  chain(checkFixture(fixture, design.making, 'near'), ({ checks }) =>
    ok(checks.filter(({ passed }) => !passed)),
  );
