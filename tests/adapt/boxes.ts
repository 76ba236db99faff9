import { readFileSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import type { Band } from '../../src/adapt/reach.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture, ReachBox } from '../../src/family/index.ts';
import { point, type Interval } from '../../src/geometry/interval.ts';
import { solveDesign } from '../../src/make/engine.ts';

export const bandOf = (across: Interval, up: Interval): Band => ({ across, up });

/** A single blade: of the rests its height, thickness and angle. */
export const boxOf = (across: number, up: number, run: number, also = 0): ReachBox => ({
  across: point(across),
  up: point(up),
  run: point(run),
  also: point(also),
});

export const raise = (message: string): never => {
  throw new Error(message);
};

/** Whether a proved range holds a number, but for rounding. */
export const holds = ([low, high]: Interval, value: number): boolean =>
  low <= value + 1e-9 && value - 1e-9 <= high;

/** An example of a family, opened. */
export const openedOf =
  (family: string) =>
  (name: string): Design => {
    const file = `jigs/${family}/examples/${name}.jig.json`;
    const design = openDesign(readFileSync(file), registry);
    return design.ok ? design.value : raise(JSON.stringify(design.issues));
  };

export const solved = (design: Design): Fixture => {
  const fixture = solveDesign(design, registry);
  return fixture.ok ? fixture.value : raise(JSON.stringify(fixture.issues));
};
