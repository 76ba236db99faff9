import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { registry } from '../../jigs/registry.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Fixture, Registry } from '../../src/family/index.ts';

/** A design of a family, opened the way the program opens it. */
export interface Example {
  readonly file: string;
  readonly design: Design;
  /** Where its family is, if not among the registered ones. */
  readonly from?: Registry;
}

/** Every example design that a family ships. */
export const examplesOf = (family: string): Example[] => {
  const folder = join('jigs', family, 'examples');
  return readdirSync(folder)
    .filter((name) => name.endsWith('.jig.json'))
    .map((name) => {
      const opened = openDesign(readFileSync(join(folder, name)), registry);
      if (!opened.ok) throw new Error(`${name}: ${opened.issues.map((i) => i.message).join(' ')}`);
      return { file: name, design: opened.value };
    });
};

/** The value of a result that has to be there. */
export const valueOf = <T>(
  result: { ok: true; value: T } | { ok: false; issues: readonly { message: string }[] },
): T => {
  if (!result.ok) throw new Error(result.issues.map((i) => i.message).join(' '));
  return result.value;
};

export const solved = ({ design, from = registry }: Example): Fixture => {
  const family = from.families[design.fixture.family];
  if (!family) throw new Error(`no family ${design.fixture.family}`);
  return valueOf(family.solve(design));
};

/**
 * Whether everything of a fixture is carried by hand, as a gauge is: it meets nothing of the
 * machine, so there are no bodies to look at.
 */
export const isByHand = (fixture: Fixture): boolean =>
  fixture.place(fixture.settings[0]?.id ?? '').every(({ carrier }) => carrier === 'hand');
