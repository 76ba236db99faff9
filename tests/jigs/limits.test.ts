import { describe, expect, it } from 'vitest';
import { onPlaten, speedCheck, undercutCheck, worst } from '../../jigs/shared/checks/ranges.ts';
import { leanLoss, runningGrowth } from '../../jigs/shared/rules.ts';
import { standOf } from '../../jigs/shared/site.ts';
import { withValue } from '../../src/core/path.ts';
import { faceDepth } from '../../src/grinder/belt-path.ts';
import type { CheckResult } from '../../src/family/index.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const exampleOf = (family: string, file: string) => {
  const example = examplesOf(family).find((one) => one.file.startsWith(file));
  if (!example) throw new Error('no example');
  return example.design;
};

const checksOf = (design: ReturnType<typeof exampleOf>): readonly CheckResult[] =>
  valueOf(solved({ file: '', design }).checks());

const found = (checks: readonly CheckResult[], id: string): number => {
  const value = checks.find((check) => check.id === id)?.found;
  if (typeof value !== 'number') throw new Error(`no number for ${id}`);
  return value;
};

describe('the widest gap to a belt', () => {
  // 29 CFR 1910.215(a)(4): work rests within one eighth of an inch of the wheel.
  it.each([
    ['spine-rest', 'paring', ['range/gap/limit']],
    ['carriage', 'marking', ['range/gap/limit']],
    ['edge-rest', 'herb', ['range/gap/seat', 'range/gap/nose']],
  ])('of a %s is an eighth of an inch', (family, file, ids) => {
    const checks = checksOf(exampleOf(family, file));
    for (const id of ids)
      expect(checks.find((check) => check.id === id)?.atMost, id).toBeCloseTo(25.4 / 8, 9);
  });
});

describe('a platen that leans', () => {
  const design = exampleOf('spine-rest', 'hunting');
  const [belt] = design.grinder.belts;
  const [backing] = design.grinder.backings;
  if (!belt || !backing) throw new Error('no belt');

  // By turning the platen about the top of the rest, which shares nothing with the formulas.
  it.each([-5, 0, 4])('of %s degrees is met where its turned face is', (lean) => {
    const grinder = { ...design.grinder, lean };
    const [c, s] = [Math.cos((lean * Math.PI) / 180), Math.sin((lean * Math.PI) / 180)];
    const deep = faceDepth(grinder, belt, backing);
    expect(deep).toBeGreaterThan(0.5);
    const stack = 30;
    const stand = standOf(grinder, belt, backing, stack);
    for (const along of [-7, 0, 12]) {
      const up = onPlaten(grinder, stand, stack, along);
      // `deep` in front of the platen and `up` along it, as they stood before it was leant back.
      const [y, z] = [deep * c - up * s, deep * s + up * c];
      // The same place by the seat: at its height less what the face's own lean takes.
      expect(z).toBeCloseTo(stack + along * c, 9);
      expect(y + stand.offset).toBeCloseTo(-along * s, 9);
    }
  });
});

describe('a plate before a platen that leans', () => {
  const design = exampleOf('spine-rest', 'paring');

  it.each([-6, 0, 3])('of %s degrees loses what its nearest edge is nearer', (lean) => {
    const [c, s] = [Math.cos((lean * Math.PI) / 180), Math.sin((lean * Math.PI) / 180)];
    // Upper and lower front edge, from the place of the face at the plate's upper side.
    const [gap, thickness] = [2, 8];
    const edges = [
      [gap, 0],
      [gap, -thickness],
    ] as const;
    const nearest = Math.min(...edges.map(([y, z]) => y * c + z * s));
    const leaning = { ...design, grinder: { ...design.grinder, lean } };
    expect(leanLoss(leaning, thickness, gap)).toBeCloseTo(gap - nearest, 9);
  });

  it('loses to a running belt both what it flutters and its splice', () => {
    const belt = { ...design.grinder.belt, flutter: 0.3, splice: 0.25 };
    expect(runningGrowth({ ...design, grinder: { ...design.grinder, belt } })).toBeCloseTo(0.55, 9);
  });
});

describe('what every pass but the last is held to', () => {
  const setting = (id: string, step: number, undercutMargin: number) => ({
    id,
    step,
    blades: [{ undercutMargin }],
  });

  it('is not told by the last one, which ends at the finished face', () => {
    const check = undercutCheck([
      setting('rough', 1, 0.4),
      setting('fine', 2, 0.2),
      setting('last', 3, 0),
    ]);
    expect(check).toMatchObject({ found: 0.2, passed: true, pose: { setting: 'fine' } });
  });

  it('fails where a number is missing, wherever that stands', () => {
    const terms = {
      id: 'range/edge',
      label: 'l',
      basis: 'b',
      fix: 'f',
      atLeast: 0,
    };
    const of = (values: number[], most = false) =>
      worst(
        terms,
        values.map((value, i) => ({ id: String(i), value })),
        ({ value }) => value,
        most,
      );
    expect(of([1, Number.NaN, 2]).passed).toBe(false);
    expect(of([Number.NaN, 1]).passed).toBe(false);
    expect(of([]).passed).toBe(false);
    expect(of([3, 1, 2]).found).toBe(1);
    expect(of([1, 3, 2], true).found).toBe(3);
  });
});

describe('the speed of a belt', () => {
  const { grinder } = exampleOf('spine-rest', 'paring');

  it.each([
    [20, 30],
    [30, 20],
  ])('is held to the lesser of what belt (%s m/s) and wheel (%s m/s) bear', (belt, wheel) => {
    const drive = { ...grinder.drive, beltRating: belt, wheelRating: wheel };
    expect(speedCheck({ ...grinder, drive }).atMost).toBe(20);
  });
});

describe('the reserve of a slot', () => {
  it.each([
    ['spine-rest', 'hunting'],
    ['edge-rest', 'herb'],
  ])('of a %s is what is left at either end', (family, file) => {
    const cut = withValue(exampleOf(family, file), 'making.plates.process', 'laser');
    const slotted = withValue(cut, 'fixture.parameters.guide', 'slots');
    const reserve = 'travelReserve';
    const now = Number(slotted.fixture.parameters[reserve]);
    const more = withValue(slotted, `fixture.parameters.${reserve}`, now + 1);
    const [before, after] = [checksOf(slotted), checksOf(more)];
    const ids = before.flatMap(({ id }) => (id.startsWith('range/travel/') ? [id] : []));
    expect(ids.length).toBeGreaterThan(2);
    for (const id of ids) {
      expect(found(before, id), id).toBeGreaterThanOrEqual(now - 1e-9);
      // Half millimetres, to which lengths are rounded, may go one way or the other.
      expect(Math.abs(found(after, id) - found(before, id) - 1), id).toBeLessThan(0.26);
    }
  });
});
