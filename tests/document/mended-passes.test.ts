import { expect, it } from 'vitest';
import { withValue } from '../../src/core/path.ts';
import { checkDesign, openToMend } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { registry, sparse } from './documents.ts';

/** The design with two blades, the second of which comes to the belts thinner. */
const withThin = (asHeatTreated: number, edges: readonly number[]): Design => {
  const [blade] = sparse().blades;
  if (!blade) throw new Error('no blade');
  const thin = { ...blade, name: 'Thin', edge: { ...blade.edge, asHeatTreated } };
  const sequence = edges.map((edge) => ({ belt: 'P60', backing: 'bare', edge }));
  const opened = openToMend(
    JSON.stringify({ ...sparse(), blades: [blade, thin], sequence }),
    registry,
  );
  if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
  return opened.value;
};

// A belt can only meet an edge that is at least as thick as where it stops.
it('raises a pass that stops too thin to no more than the thinnest blade still has', () => {
  const design = withThin(0.5, [0.3, 0.4, 0.2]);
  const found = checkDesign(design, registry).issues;
  expect(found.map(({ code }) => code)).toEqual(['edge-rises']);
  const mend = found[0]?.mend;
  if (!mend) throw new Error('no mend');
  expect(mend.path).toBe('sequence.0.edge');
  expect(mend.value).toBeGreaterThan(0.4);
  expect(mend.value).toBeLessThan(0.5);
  expect(checkDesign(withValue(design, mend.path, mend.value), registry).issues).toEqual([]);
});

it('takes a first belt that stops where the thinnest blade is, and no thicker', () => {
  const codes = (first: number) =>
    checkDesign(withThin(0.5, [first, 0.2]), registry).issues.map(({ code }) => code);
  expect(codes(0.5)).toEqual([]);
  expect(codes(0.51)).toEqual(['edge-not-met']);
});
