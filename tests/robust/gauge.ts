import { readFileSync } from 'node:fs';
import { bevelGauge } from '../../jigs/template/index.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Registry } from '../../src/family/index.ts';

/** A registry of the template family alone: quick to solve, to build and to check. */
export const gaugeRegistry: Registry = { families: { 'bevel-gauge': bevelGauge } };

/** The text of a design of that family, from the blades and grinder of a worked design. */
export const gaugeText = (from = 'kitchen-210', thickness = 4): string => {
  const source = readFileSync(`jigs/spine-rest/examples/${from}.jig.json`, 'utf8');
  const design = JSON.parse(source) as { blades: object[] };
  return JSON.stringify({
    ...design,
    // One angle gives one height above the edge, which is the line that a gauge can follow.
    blades: design.blades.map((blade) => ({ ...blade, line: { follow: 'edge', allowed: 1.5 } })),
    name: 'Gauges for two kitchen blades',
    fixture: { family: 'bevel-gauge', parameters: { thickness } },
  });
};

export const gaugeDesign = (from?: string, thickness?: number): Design => {
  const opened = openDesign(gaugeText(from, thickness), gaugeRegistry);
  if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
  return opened.value;
};

const font = (name: string): Uint8Array =>
  readFileSync(`node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`);

export const fonts = { regular: font('DejaVuSans'), bold: font('DejaVuSans-Bold') };
