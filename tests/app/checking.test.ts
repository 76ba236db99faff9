import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { registry } from '../../jigs/registry.ts';
import { AT_HAND } from '../../src/check/distance/index.ts';
import { openDesign } from '../../src/document/open.ts';
import type { Design } from '../../src/document/schema.ts';
import { createWorkshop, type Fixture } from '../../src/family/index.ts';
import { fail, type Result } from '../../src/core/result.ts';
import { checkDesign, solveDesign, type Checked } from '../../src/make/engine.ts';
import { checkByPieces, orderOf, proveByPieces, type Preview } from '../../src/worker/checking.ts';
import { practise } from '../../src/worker/practice.ts';

const opened = openDesign(
  readFileSync('jigs/backing-carrier/examples/leather-finish.jig.json'),
  registry,
);
if (!opened.ok) throw new Error('the example does not open');
// A frame so far forward that the carrier meets it.
const { grinder } = opened.value;
const keepOuts: Design['grinder']['keepOuts'] = grinder.keepOuts.map((one) => ({
  ...one,
  max: [60, -5, 150],
}));
const design: Design = { ...opened.value, grinder: { ...grinder, keepOuts } };

const inPieces = async (of: Design, overtaken: () => boolean) => {
  const workshop = createWorkshop();
  const fixture = solveDesign(of, registry, workshop);
  if (!fixture.ok) throw new Error(fixture.issues[0]?.message);
  const told: Preview[] = [];
  const preview = (found: Preview) => void told.push(found);
  const proofs: Result<Checked>[] = [];
  const result = await checkByPieces(fixture.value, orderOf(of), workshop, {
    overtaken,
    preview,
    proved: (checked) => void proofs.push(checked),
    breath: 0,
  });
  return { told, proofs, result };
};

describe('checks in pieces', () => {
  it('come to what they come to in one go, and tell on the way what has failed', async () => {
    const { result, told } = await inPieces(design, () => false);
    const whole = checkDesign(design, registry);
    if (!result?.ok || !whole.ok) throw new Error('no checks');
    expect(result.value.checks).toEqual(whole.value.checks);
    expect(told.length).toBeGreaterThan(0);
    expect(told.at(-1)?.failed.map(({ id }) => id)).toContain('clearance/face/guards');
    const failing = new Set(whole.value.checks.flatMap(({ id, passed }) => (passed ? [] : [id])));
    for (const { share, failed } of told) {
      expect(share).toBeGreaterThan(0);
      expect(failed.every(({ id, passed }) => !passed && failing.has(id))).toBe(true);
    }
  });

  it('prove what holds before they have measured every gap', async () => {
    const { result, proofs } = await inPieces(design, () => false);
    const [proof] = proofs;
    if (!result?.ok || !proof?.ok) throw new Error('no checks');
    const { checks } = result.value;
    expect(proof.value.checks.map(({ id, passed }) => [id, passed])).toEqual(
      checks.map(({ id, passed }) => [id, passed]),
    );
    // Both searches end at one pair of points, each by its own way: alike to the last digits.
    const near = (value: number): unknown => expect.closeTo(value, 9);
    proof.value.checks.forEach((early, i) => {
      const { kind, found, atLeast = 0 } = checks[i] ?? early;
      // What is farther beyond what is asked is told as the least it is.
      if (kind !== 'clearance' || found === null || found < atLeast + 0.95 * AT_HAND)
        // How much bodies share is told at the end.
        expect(checks[i]).toMatchObject({
          ...early,
          message: expect.stringContaining(early.message),
          ...(early.found === null ? {} : { found: near(early.found) }),
          ...(early.points ? { points: early.points.map((p) => p.map(near)) } : {}),
        });
      else expect(early.found).toBeLessThanOrEqual(found);
    });
    const far = proof.value.checks.filter(({ points, kind }) => kind === 'clearance' && !points);
    expect(far.length).toBeGreaterThan(0);
  });

  it('end without an answer when a newer question came', async () => {
    let looks = 0;
    const { result, told } = await inPieces(design, () => (looks += 1) > 1);
    expect(result).toBeNull();
    expect(looks).toBe(2);
    expect(told.length).toBeLessThan(3);
  });

  it('leave far gaps alone for a hand that moves on once all is proved', async () => {
    const workshop = createWorkshop();
    const fixture = solveDesign(design, registry, workshop);
    if (!fixture.ok) throw new Error(fixture.issues[0]?.message);
    let [proofs, toldAfter] = [0, 0];
    const result = await checkByPieces(fixture.value, orderOf(design), workshop, {
      overtaken: () => proofs > 0,
      preview: () => void (toldAfter += proofs),
      proved: () => void (proofs += 1),
      breath: 0,
    });
    expect(result).toBeNull();
    expect(proofs).toBe(1);
    expect(toldAfter).toBe(0);
  });
});

describe('a drag that is practised', () => {
  const practised = async (overtakenAt: number) => {
    const thicknesses: number[] = [];
    const solve: Parameters<typeof practise>[1] = (of, workshop) => {
      thicknesses.push(of.blades[0]?.thickness[0]?.t ?? NaN);
      return solveDesign(of, registry, workshop);
    };
    await practise(opened.value, solve, () => thicknesses.length >= overtakenAt);
    return thicknesses;
  };

  it('goes through as many designs as it says, none of them the one on the board', async () => {
    const seen = await practised(Infinity);
    expect(seen.length).toBeGreaterThan(2);
    expect(new Set(seen).size).toBe(seen.length);
    expect(seen).not.toContain(opened.value.blades[0]?.thickness[0]?.t);
  });

  it('ends with a real question, and where nothing can be solved', async () => {
    expect((await practised(2)).length).toBe(2);
    let tries = 0;
    const refused = (): Result<Fixture> => fail(...((tries += 1), []));
    await practise(opened.value, refused, () => false);
    expect(tries).toBe(1);
  });

  it('proves what a maker would be told', async () => {
    const workshop = createWorkshop();
    const fixture = solveDesign(design, registry, workshop);
    if (!fixture.ok) throw new Error(fixture.issues[0]?.message);
    const order = orderOf(design);
    const proof = await proveByPieces(fixture.value, order, workshop, { overtaken: () => false });
    const whole = checkDesign(design, registry);
    if (!proof?.ok || !whole.ok) throw new Error('no checks');
    expect(proof.value.checks.map(({ id, passed }) => [id, passed])).toEqual(
      whole.value.checks.map(({ id, passed }) => [id, passed]),
    );
  });
});
