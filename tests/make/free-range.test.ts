import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { searchEnd, type Outcome } from '../../src/make/free-range/search.ts';

/** Good up to and including an edge on either side of zero, a check fails beyond it. */
const upTo =
  (edge: number) =>
  (value: number): Outcome =>
    Math.abs(value) <= edge ? { kind: 'good', fails: [] } : { kind: 'check', fails: ['gap'] };

// The edges are drawn by the tests, so that each end is known before it is searched.
describe('the end of a free range', () => {
  it('brackets an edge to the tolerance, on either side and with or without a limit', () => {
    const edges = fc.double({ min: 0.05, max: 60, noNaN: true });
    fc.assert(
      fc.property(edges, fc.constantFrom(-1, 1), fc.boolean(), (edge, sign, limited) => {
        const limit = sign * (limited ? 100 : Infinity);
        const end = searchEnd({ from: 0, limit, first: 0.25, tolerance: 0.01 }, upTo(edge));
        expect(end.stop).toBe('check');
        expect(end.fails).toEqual(['gap']);
        expect(end.good * sign).toBeLessThanOrEqual(edge);
        expect((end.bad ?? NaN) * sign).toBeGreaterThan(edge);
        expect(Math.abs((end.bad ?? NaN) - end.good)).toBeLessThanOrEqual(0.01);
      }),
      { numRuns: 200, seed: 7 },
    );
  });

  it('says when the allowed range ends first, and that far is not for ever', () => {
    const terms = { from: 0, limit: 5, first: 1, tolerance: 0.01 };
    expect(searchEnd(terms, upTo(6))).toMatchObject({ good: 5, stop: 'limit', fails: [] });
    const far = searchEnd({ ...terms, limit: Infinity }, upTo(1e6));
    expect(far.stop).toBe('far');
    expect(far.good).toBe(256);
  });

  it('tells a refusal from a check that fails', () => {
    const end = searchEnd({ from: 0, limit: 8, first: 1, tolerance: 0.5 }, (value) =>
      value < 3 ? { kind: 'good', fails: [] } : { kind: 'refused', fails: ['no-stroke'] },
    );
    expect(end).toMatchObject({ stop: 'refused', fails: ['no-stroke'] });
  });
});
