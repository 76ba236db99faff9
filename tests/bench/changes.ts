/** Shipped designs and the changes a maker makes to them, for the benches. */
import { readFileSync, readdirSync } from 'node:fs';
import { registry } from '../../jigs/registry.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { solveDesign } from '../../src/make/engine.ts';

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

/** A parameter of a fixture, and what it is changed by. */
interface Step {
  readonly name: string;
  readonly by: number;
}

/** What single parts take their shape from, or two where there is no such: the first that is of use. */
const OF_A_PART: Readonly<Record<string, readonly Step[]>> = {
  'spine-rest': [
    { name: 'guidePlay', by: 0.01 },
    { name: 'handDistance', by: 0.5 },
  ],
  'edge-rest': [
    { name: 'guidePlay', by: 0.01 },
    { name: 'handDistance', by: 0.5 },
  ],
  carriage: [
    { name: 'tabPlay', by: 0.01 },
    { name: 'jawGap', by: 0.1 },
  ],
  'backing-carrier': [{ name: 'endRadius', by: 0.05 }],
};

/** What up to nine parts take their shape from. */
const OF_PARTS: Readonly<Record<string, Step>> = {
  'spine-rest': { name: 'stepWing', by: 0.25 },
  'edge-rest': { name: 'stepWing', by: 0.25 },
  carriage: { name: 'jawWidth', by: 0.25 },
  'backing-carrier': { name: 'depth', by: 0.05 },
};

/** A change of a design so many times over. */
export type Change = (design: Design, times: number) => Design;

const changeBy =
  ({ name, by }: Step): Change =>
  (design, times) => {
    const { family, parameters } = design.fixture;
    const schema = registry.families[family]?.parameters[name];
    const now = parameters[name] ?? (schema?.kind === 'number' ? schema.initial : undefined);
    if (typeof now !== 'number') throw new Error(`${family} has no number "${name}"`);
    return {
      ...design,
      fixture: { ...design.fixture, parameters: { ...parameters, [name]: now + times * by } },
    };
  };

const shapesOf = (design: Design): readonly string[] => {
  const solved = solveDesign(design, registry);
  const parts = solved.ok ? solved.value.parts() : solved;
  if (!parts.ok) throw new Error(parts.issues.map(({ message }) => message).join('\n'));
  return parts.value.map(({ layers }) => JSON.stringify(layers));
};

/** The change of as few parts as a parameter of the family makes, and the parameter's name. */
export const ofOnePart = (design: Design): { readonly name: string; readonly make: Change } => {
  const before = new Set(shapesOf(design));
  for (const step of OF_A_PART[design.fixture.family] ?? []) {
    const make = changeBy(step);
    if (shapesOf(make(design, 1)).some((shape) => !before.has(shape)))
      return { name: step.name, make };
  }
  throw new Error(`no parameter makes a part of "${design.name}" anew`);
};

/** The change of several parts. */
export const ofSeveralParts = (
  design: Design,
): { readonly name: string; readonly make: Change } => {
  const step = OF_PARTS[design.fixture.family];
  if (!step) throw new Error(`no parameter of ${design.fixture.family} is known`);
  return { name: step.name, make: changeBy(step) };
};
