import { describe, expect, it } from 'vitest';
import * as edgeRest from '../../jigs/edge-rest/fixture.ts';
import { bedOf, settledPoses } from '../../jigs/edge-rest/pose/poses.ts';
import { solve } from '../../jigs/edge-rest/solve.ts';
import * as spineRest from '../../jigs/spine-rest/fixture.ts';
import { solve as solveSpineRest } from '../../jigs/spine-rest/solve.ts';
import { refined } from '../../jigs/shared/pose/refined.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import type { Result } from '../../src/core/result.ts';
import type { BladePose, CheckResult } from '../../src/family/index.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import { examplesOf } from '../family/examples.ts';

/** A blade that rises along its stroke by a curve. */
const riding =
  (height: (u: number) => number) =>
  (u: number): BladePose => ({
    setting: 'one',
    blade: 'A',
    u,
    frame: { ...WORLD, origin: [-u, 0, height(u)] },
  });

/** A question about a stroked fixture, as far as it is asked here. */
interface Stroke {
  readonly plan: { readonly settings: readonly { readonly id: string }[] };
  readonly poses: (setting: string, blade: string) => readonly BladePose[];
}

interface Asking<Q, S> {
  readonly solidsOf: (question: Q) => Result<S>;
  readonly checksOf: (question: Q, solids: S, gaps: 'near') => Result<readonly CheckResult[]>;
}

const questionOf = <Q>(solved: Result<{ readonly question: () => Result<Q> }>): Q => {
  const question = solved.ok ? solved.value.question() : solved;
  if (!question.ok) throw new Error('not solved');
  return question.value;
};

const SPINE = (u: number): [number, number, number][] => [[u, 0, 0]];

/** How far the straight way from pose to pose leaves a curve, at a hundred places a stretch. */
const leaves = (poses: readonly BladePose[], height: (u: number) => number): number =>
  Math.max(
    ...poses.slice(1).flatMap((b, i) => {
      const a = poses[i];
      if (!a) return [];
      return Array.from({ length: 101 }, (_, k) => {
        const s = k / 100;
        const straight = a.frame.origin[2] + s * (b.frame.origin[2] - a.frame.origin[2]);
        return Math.abs(straight - height(a.u + s * (b.u - a.u)));
      });
    }),
  );

describe('poses where a stroke bends', () => {
  const us = Array.from({ length: 9 }, (_, i) => 10 * i);

  it('leave a parabola by no more than 0.005 mm, and are few where it is straight', () => {
    // From a chord of length h a parabola a u^2 stands off by a h^2 / 4.
    const bent = (u: number): number => (u < 40 ? 0 : 0.002 * (u - 40) ** 2);
    const poses = refined(us, riding(bent), SPINE);
    expect(leaves(poses, bent)).toBeLessThan(0.0051);
    expect(leaves(us.map(riding(bent)), bent)).toBeCloseTo((0.002 * 100) / 4, 9);
    expect(poses.filter(({ u }) => u < 30).map(({ u }) => u)).toEqual([0, 10, 20]);
  });

  it('are none where the blade does not come to rest between two of them', () => {
    const bent = (u: number): number => 0.002 * u ** 2;
    const lost = (u: number): BladePose | undefined =>
      u > 41 && u < 49 ? undefined : riding(bent)(u);
    expect(refined(us, riding(bent), SPINE).length).toBeGreaterThan(us.length);
    expect(refined(us, lost, SPINE)).toEqual([]);
  });
});

describe('the stroke of a blade on an edge rest', () => {
  it('has no poses at all where pads at the ends of the seat hold it in some places only', () => {
    const [example] = examplesOf('edge-rest');
    if (!example) throw new Error('no design');
    const { design } = example;
    const { plan, context } = questionOf(solve(design, createWorkshop()));
    const bed = bedOf(context, design.grinder.belt.width);
    const id = plan.settings[0]?.id ?? '';
    const name = design.blades[0]?.name ?? '';
    const count = (own: typeof bed): number =>
      settledPoses(design.blades, plan.settings, own, createWorkshop().keep)(id, name).length;
    expect(count(bed)).toBeGreaterThanOrEqual(9);
    // So far out that the middle of the blade stands before neither pad, and its ends before one.
    const { outline } = design.blades[0] ?? {};
    const length = outline?.kind === 'dimensions' ? outline.length : 0;
    expect(count({ ...bed, half: length, lipEnd: 0.55 * length, pads: true })).toBe(0);
  });
});

/** What is found where the stroke of each setting in turn is not known. */
const withoutEach = <Q extends Stroke, S>(
  question: Q,
  { solidsOf, checksOf }: Asking<Q, S>,
): (readonly CheckResult[])[] =>
  question.plan.settings.map(({ id }) => {
    const lost = {
      ...question,
      poses: (setting: string, blade: string) =>
        setting === id ? [] : question.poses(setting, blade),
    };
    const solids = solidsOf(lost);
    const checks = solids.ok ? checksOf(lost, solids.value, 'near') : solids;
    if (!checks.ok) throw new Error(checks.issues.map(({ message }) => message).join());
    return checks.value;
  });

describe('a setting whose stroke is not known', () => {
  it.each([
    ...examplesOf('edge-rest').map(({ design }) => ({ family: 'edge-rest', design })),
    ...examplesOf('spine-rest').map(({ design }) => ({ family: 'spine-rest', design })),
  ])('lets no check of a blade on a $family pass: $design.name', ({ family, design }) => {
    const workshop = createWorkshop();
    const found =
      family === 'edge-rest'
        ? withoutEach(questionOf(solve(design, workshop)), edgeRest)
        : withoutEach(questionOf(solveSpineRest(design, workshop)), spineRest);
    expect(found.length).toBeGreaterThan(1);
    for (const checks of found) {
      const ofBlade = checks.filter(({ id }) =>
        /^(?:clearance|contact)\/blade\/|^range\/support/.test(id),
      );
      expect(ofBlade.length).toBeGreaterThan(5);
      expect(ofBlade.filter(({ passed, found: told }) => passed || told !== null)).toEqual([]);
    }
  });
});
