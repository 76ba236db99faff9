import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { adapt } from '../../src/adapt/adapt.ts';
import { ontoBlades } from '../../src/adapt/onto-blades.ts';
import { ontoGrinder } from '../../src/adapt/onto-grinder.ts';
import { ok } from '../../src/core/result.ts';
import { openDesign } from '../../src/document/open.ts';
import { saveDesign } from '../../src/document/save.ts';
import type { Design } from '../../src/document/schema.ts';
import type { Registry } from '../../src/family/index.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import { gaugeDesign, gaugeRegistry } from '../robust/gauge.ts';

const preset = (name: string): Grinder => {
  const grinder = grinderPresets[name];
  if (!grinder) throw new Error(name);
  return grinder;
};

describe('the blades of another design', () => {
  const mine = gaugeDesign();
  /** Blades that come so thick, on belts of their own. */
  const theirs = (asHeatTreated: number): Design => ({
    ...mine,
    blades: mine.blades.map((blade) => ({ ...blade, edge: { ...blade.edge, asHeatTreated } })),
    grinder: {
      ...mine.grinder,
      belts: mine.grinder.belts.map((b) => ({ ...b, id: `own-${b.id}` })),
    },
    sequence: [{ belt: 'own-P120', backing: 'bare', edge: 0.2, steeper: 0 }],
  });

  it('bring their passes where the first of ours would stop thicker than they come', () => {
    const first = mine.sequence[0]?.edge ?? 0;
    // A belt can only meet an edge that is at least as thick as where it stops.
    expect(ontoBlades(mine, theirs(first)).design.sequence).toEqual(mine.sequence);
    const { design, notes } = ontoBlades(mine, theirs(first - 0.05));
    expect(design.sequence).toEqual([{ belt: 'P120', backing: 'bare', edge: 0.2, steeper: 0 }]);
    expect(notes.map(({ path }) => path)).toEqual(['sequence', 'sequence.0.belt']);
  });
});

describe('a pass on another grinder', () => {
  it('keeps the kind of its backing, whatever that is called there', () => {
    const from = gaugeDesign();
    const [, leather] = from.grinder.backings;
    if (leather?.kind !== 'leather') throw new Error('no leather');
    const backings: Grinder['backings'] = [
      { id: 'plain', kind: 'none', thickness: 0 },
      { ...leather, id: 'felted' },
    ];
    const { design } = ontoGrinder(from, { ...from.grinder, backings });
    expect(from.sequence.map(({ backing }) => backing)).toContain('leather');
    expect(design.sequence.map(({ backing }) => backing)).toEqual(
      from.sequence.map(({ backing }) => (backing === 'leather' ? 'felted' : 'plain')),
    );
  });
});

describe('the report of an adapted design', () => {
  it('does not pass where no check was run', () => {
    const [[id, family] = []] = Object.entries(gaugeRegistry.families);
    if (id === undefined || family === undefined) throw new Error('no family');
    const unchecked: Registry = {
      families: {
        [id]: {
          ...family,
          solve: (...given) => {
            const solved = family.solve(...given);
            return solved.ok ? ok({ ...solved.value, checks: () => ok([]) }) : solved;
          },
        },
      },
    };
    const adapted = adapt(gaugeDesign(), { grinder: preset('arm-50') }, unchecked);
    if (!adapted.ok) throw new Error('not adapted');
    expect(adapted.value.adaptation).toMatchObject({ checks: 0, failed: [], passed: false });
  });

  it('warns of what is kept from the old machine and measured on the new one', () => {
    const file = 'jigs/backing-carrier/examples/leather-finish.jig.json';
    const opened = openDesign(readFileSync(file), registry);
    if (!opened.ok) throw new Error(file);
    const grinder: Grinder = { ...opened.value.grinder, name: 'Next door', lean: 1 };
    const adapted = adapt(opened.value, { grinder }, registry);
    if (!adapted.ok) throw new Error(JSON.stringify(adapted.issues));
    const kept = adapted.value.adaptation.notes.filter(({ code }) => code === 'describes-machine');
    expect(kept.length).toBeGreaterThan(0);
    for (const { message } of kept) {
      expect(message).toContain(`kept from "${opened.value.grinder.name}"`);
      expect(message).toContain('on "Next door"');
    }
  });

  it('counts the revision no further than a file may hold it', () => {
    const adapted = adapt(
      { ...gaugeDesign(), revision: 9999 },
      { grinder: preset('arm-50') },
      gaugeRegistry,
    );
    if (!adapted.ok) throw new Error('not adapted');
    expect(openDesign(saveDesign(adapted.value.design), gaugeRegistry).ok).toBe(true);
  });
});
