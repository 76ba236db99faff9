import { describe, expect, it } from 'vitest';
import { cuttingPlans } from '../../src/drawing/cutting-plan.ts';
import { boundingBox, containsPoint } from '../../src/geometry/loop-measure.ts';
import { plansOf } from '../../src/make/files/nest.ts';
import { titleBlock } from '../../src/make/files/title.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';
import { clashes, outside } from './overlap.ts';

/** Worked designs whose plates are cut by a beam, each on sheets of a size that a shop might have. */
const worked = ['carriage', 'backing-carrier'].map((family) => {
  const [example] = examplesOf(family);
  if (!example) throw new Error('Every family ships a worked design.');
  const { design } = example;
  const { plates } = design.making;
  const nest = { gap: 5, margin: 10, width: 400, height: 300, sheets: 'beside' } as const;
  const making = { ...design.making, plates: { ...plates, nest } };
  const parts = valueOf(solved(example).parts());
  const cut = parts.flatMap((part) => (part.kind === 'plate' ? [part] : []));
  const plans = valueOf(plansOf(cut, making));
  const info = { title: family, gap: nest.gap, margin: nest.margin };
  return { family, cut, plans, sheets: cuttingPlans(plans, info, titleBlock(design, '')) };
});

describe.each(worked)('cutting plans of the $family', ({ cut, plans, sheets }) => {
  it('show every plate in the number that is wanted, on the sheet and off its margin', () => {
    const pieces = plans.flatMap((plan) => plan.pieces);
    for (const { id, quantity } of cut)
      expect(pieces.filter(({ part }) => part === id)).toHaveLength(quantity);
    expect(pieces).toHaveLength(cut.reduce((sum, { quantity }) => sum + quantity, 0));
    for (const { size, pieces: laid } of plans)
      for (const { cut: profile } of laid) {
        const { min, max } = boundingBox(profile.outer);
        expect(Math.min(...min)).toBeGreaterThan(10 - 1e-6);
        expect(max[0]).toBeLessThan(size[0] - 10 + 1e-6);
        expect(max[1]).toBeLessThan(size[1] - 10 + 1e-6);
      }
  });

  it('name the file, list what lies on it, and put a number into every piece', () => {
    expect(sheets).toHaveLength(plans.length);
    sheets.forEach(({ items }, i) => {
      const plan = plans[i];
      if (!plan) throw new Error('There is a sheet for every plan.');
      const texts = items.flatMap((item) => (item.kind === 'text' ? [item] : []));
      for (const words of [plan.file, ...plan.pieces.map(({ name }) => name)])
        expect(texts.map(({ text }) => text)).toContain(words);
      // The frame of the sheet, from which places in the picture are told.
      const [from, to] = ['400', '300'].map((size) => texts.find(({ text }) => text === size));
      expect(from && to).toBeDefined();
      const frame = items.flatMap((item) =>
        item.kind === 'polyline' && item.stroke === 'phantom' ? [item.points] : [],
      )[0];
      const [x0, y0] = [0, 1].map((axis) => Math.min(...(frame ?? []).map((p) => p[axis] ?? 0)));
      const [x1] = [Math.max(...(frame ?? []).map((p) => p[0]))];
      const k = (x1 - (x0 ?? 0)) / plan.size[0];
      const inPlan = texts.map(({ at, text }) => ({
        text,
        at: [(at[0] - (x0 ?? 0)) / k, (at[1] - (y0 ?? 0)) / k] as const,
      }));
      for (const { cut: profile } of plan.pieces)
        expect(
          inPlan.filter(
            ({ text, at }) => /^\d+$/.test(text) && containsPoint(profile.outer, [...at]),
          ),
        ).toHaveLength(1);
    });
  });

  it('stay on their paper, without a text on anything', () => {
    expect(sheets.flatMap((sheet) => [...clashes(sheet), ...outside(sheet)])).toEqual([]);
  });
});
