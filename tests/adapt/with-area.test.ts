import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { differences } from '../../src/adapt/differences.ts';
import { withArea } from '../../src/adapt/with-area.ts';
import { checkDesign, openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';

const worked: readonly Design[] = ['spine-rest', 'carriage', 'edge-rest'].flatMap((family) =>
  readdirSync(`jigs/${family}/examples`)
    .filter((file) => file.endsWith('.jig.json'))
    .map((file) => {
      const opened = openDesign(readFileSync(`jigs/${family}/examples/${file}`), registry);
      if (!opened.ok) throw new Error(file);
      return opened.value;
    }),
);
const pairs = worked.flatMap((from) => worked.map((to) => [from, to] as const));
const areasOf = (from: Design, to: Design): string[] => [
  ...new Set(differences(from, to, registry).map(({ area }) => area)),
];

describe('taking one part of another design', () => {
  it('leaves of the differences those of the other parts, and none once all are taken', () => {
    for (const [from, to] of pairs) {
      const comes = (area: string) => to.blades.some(({ name }) => area === `blades.${name}`);
      // What is new comes before what it stands in for is left out: a design never lacks a blade.
      const ordered = areasOf(from, to).sort((a, b) => Number(comes(b)) - Number(comes(a)));
      let design = from;
      ordered.forEach((area, i) => {
        design = withArea(design, to, area) as Design;
        expect(areasOf(design, to).sort(), `${from.name}: ${area} of ${to.name}`).toEqual(
          ordered.slice(i + 1).sort(),
        );
      });
      expect(checkDesign(design, registry).ok).toBe(true);
    }
  });

  // The first blade is the one that the settings are made for: its place is not taken.
  it('puts a blade that is new behind those that are there', () => {
    const [from, to] = [worked[0], worked[1]];
    const [blade] = to?.blades ?? [];
    if (!from || !to || !blade) throw new Error('two designs');
    const taken = withArea(from, to, `blades.${blade.name}`) as Design;
    expect(taken.blades).toEqual([...from.blades, blade]);
  });

  it('is refused, with the reason, where it leaves no blade', () => {
    const [from, to] = [worked[0], worked[1]];
    if (!from || !to) throw new Error('two designs');
    const none = from.blades.reduce<unknown>(
      (design, { name }) => withArea(design as Design, to, `blades.${name}`),
      from,
    );
    const checked = checkDesign(none, registry);
    expect(checked.ok).toBe(false);
    expect(checked.issues.map(({ path }) => path)).toContain('blades');
  });
});
