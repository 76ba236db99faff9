/** Shipped designs and the changes a maker makes to them, for the benches. */
import { readFileSync, readdirSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';

export interface Shipped {
  readonly name: string;
  readonly family: string;
  readonly design: Design;
}

/** The designs every family ships, in its order. */
export const shipped = (): Shipped[] =>
  Object.keys(registry.families).flatMap((family) => {
    const folder = new URL(`../../jigs/${family}/examples/`, import.meta.url);
    return readdirSync(folder)
      .filter((name) => name.endsWith('.jig.json'))
      .sort()
      .map((file) => {
        const opened = openDesign(readFileSync(new URL(file, folder), 'utf8'), registry);
        if (!opened.ok) throw new Error(opened.issues.map(({ message }) => message).join('\n'));
        return { name: file.replace('.jig.json', ''), family, design: opened.value };
      });
  });

/** The first blade thicker by `by`, mm. */
export const thicker = (design: Design, by: number): Design => ({
  ...design,
  blades: design.blades.map((blade, i) =>
    i > 0 ? blade : { ...blade, thickness: blade.thickness.map(({ u, t }) => ({ u, t: t + by })) },
  ),
});

/** A parameter that one part of the fixture takes its shape from, and what it is changed by. */
const OF_PART: Readonly<Record<string, { readonly name: string; readonly by: number }>> = {
  'spine-rest': { name: 'stepWing', by: 0.25 },
  'edge-rest': { name: 'stepWing', by: 0.25 },
  carriage: { name: 'jawWidth', by: 0.25 },
  'backing-carrier': { name: 'endRadius', by: 0.25 },
};

/** The design with that parameter changed `times` times over. */
export const reshaped = (design: Design, times: number): Design => {
  const { family, parameters } = design.fixture;
  const { name, by } = OF_PART[family] ?? { name: '', by: 0 };
  const schema = registry.families[family]?.parameters[name];
  const now = parameters[name] ?? (schema?.kind === 'number' ? schema.initial : undefined);
  if (typeof now !== 'number') throw new Error(`${family} has no number "${name}"`);
  return {
    ...design,
    fixture: { ...design.fixture, parameters: { ...parameters, [name]: now + times * by } },
  };
};
