import { describe, expect, it } from 'vitest';
import { frame, type Frame } from '../../src/geometry/frame.ts';
import { pairResult, withShared } from '../../src/check/assembly-result.ts';
import { checkPairs, type PairRule } from '../../src/check/distance/pairs.ts';
import { prepare } from '../../src/check/distance/solid.ts';
import { clearance } from '../../src/check/distance/clearance.ts';
import type { Body } from '../../src/check/distance/body.ts';
import type { Sweep } from '../../src/check/distance/motion.ts';
import { blockMesh, body, mesh } from './shapes.ts';

const block = (name: string, low: [number, number, number], high: [number, number, number]) =>
  body(name, [{ kind: 'mesh', mesh: blockMesh(low, high) }]);

const seat = block('seat', [-50, 0, -10], [50, 20, 0]);
const blade = block('blade', [-5, 2, 0], [5, 5, 40]);
const step = block('step', [-50, 5.02, 0], [50, 12, 3]);
const wheel = body('wheel', [
  { kind: 'cylinder', from: [-25, -60, 20], to: [25, -60, 20], radius: 50 },
]);

const options = { otherwise: 1, within: 20 };
const run = (bodies: readonly Body[], rules: readonly PairRule[]) => {
  const result = checkPairs(bodies, rules, options);
  if (!result.ok) throw new Error(result.issues.map((issue) => issue.message).join('\n'));
  return result.value;
};
const onSeat: PairRule = {
  kind: 'touch',
  a: 'blade',
  b: 'seat',
  tolerance: 0.05,
  apart: [0, 0, 1],
  region: { frame: frame([0, 10, 0]), size: [100, 20, 0.1] },
};
const onStep: PairRule = {
  kind: 'touch',
  a: 'blade',
  b: 'step',
  tolerance: 0.05,
  apart: [0, -1, 0],
};
const bolted: PairRule = { kind: 'ignore', a: 'step', b: 'seat', reason: 'bolted together' };

describe('pairs', () => {
  it('checks every pair, by its rule or the general gap', () => {
    const checks = run([seat, blade, step, wheel], [onSeat, onStep, bolted]);
    expect(checks).toHaveLength(6);
    expect(checks.filter((c) => !c.pass)).toEqual([]);
    const free = checks.find((c) => c.a === 'blade' && c.b === 'wheel');
    expect(free?.clearance).toMatchObject({ state: 'apart' });
    // Of what is more than 2 mm beyond the gap asked, a twentieth may be left untold.
    const [asked, away] = [1, 12];
    const told = free?.clearance?.state === 'apart' ? free.clearance : undefined;
    expect(told?.gap).toBeLessThan(away + 0.001);
    expect(told?.gap).toBeGreaterThan(away - (away - asked - 2) / 20 - 0.001);
    expect((told?.gap ?? 0) + (told?.error ?? 0)).toBeGreaterThan(away - 1e-9);
  });

  it('a rule that asks for more fails with both names and numbers', () => {
    const checks = run([blade, wheel], [{ kind: 'clear', a: 'wheel', b: 'blade', gap: 15 }]);
    expect(checks[0]).toMatchObject({ pass: false, issues: [{ code: 'clearance-too-small' }] });
    const message = checks[0]?.issues[0]?.message ?? '';
    for (const word of ['wheel', 'blade', '15.000']) expect(message).toContain(word);
    // More than `within` is asked: it is measured up to what is asked.
    const far = run([blade, wheel], [{ kind: 'clear', a: 'wheel', b: 'blade', gap: 30 }]);
    expect(far[0]?.pass).toBe(false);
  });

  it('a contact that is open, too deep, or elsewhere fails', () => {
    const moved = (z: number, y = 0): Body => ({
      ...blade,
      motion: [{ kind: 'still', label: 'set', pose: frame([0, y, z]) }],
    });
    const codes = (b: Body) => run([seat, b], [onSeat])[0]?.issues.map((issue) => issue.code);
    expect(codes(moved(0))).toEqual([]);
    expect(codes(moved(0.04))).toEqual([]);
    expect(codes(moved(-0.04))).toEqual([]);
    expect(codes(moved(0.06))).toEqual(['contact-open']);
    expect(codes(moved(30))).toEqual(['contact-open']);
    expect(codes(moved(-0.06))).toContain('contact-too-deep');
    const aside: PairRule = { ...onSeat, region: { frame: frame([40, 10, 0]), size: [8, 20, 1] } };
    expect(run([seat, blade], [aside])[0]?.issues[0]?.code).toBe('contact-elsewhere');
    // Nothing is proved where neither a direction nor a volume is declared.
    const bare: PairRule = { kind: 'touch', a: 'blade', b: 'seat', tolerance: 0.05 };
    expect(run([seat, blade], [bare])[0]?.pass).toBe(false);
  });

  it('a contact must hold along the whole stroke, and its volume may be measured instead', () => {
    const along = (to: Frame): Body => {
      const stroke: Sweep = { kind: 'glide', label: 'stroke', from: frame([-20, 0, 0]), to };
      return { ...blade, motion: [stroke] };
    };
    expect(run([seat, along(frame([20, 0, 0]))], [onSeat])[0]?.pass).toBe(true);
    const lifts = run([seat, along(frame([20, 0, 1]))], [onSeat])[0];
    expect(lifts?.issues[0]?.code).toBe('contact-open');
    const byVolume: PairRule = { kind: 'touch', a: 'blade', b: 'seat', tolerance: 0.05, volume: 1 };
    for (const [volume, pass] of [
      [0.5, true],
      [1.5, false],
      [undefined, false],
    ] as const) {
      const result = checkPairs([seat, blade], [byVolume], {
        ...options,
        overlapVolume: () => volume,
      });
      expect(result.ok && result.value[0]?.pass).toBe(pass);
    }
  });

  it('hits fail whatever gap is asked, and their volume is told', () => {
    const post = block('post', [0, 3, 10], [1, 30, 12]);
    const result = checkPairs([blade, post], [], {
      otherwise: 0,
      within: 5,
      overlapVolume: () => 7,
    });
    expect(result.ok && result.value[0]).toMatchObject({
      pass: false,
      issues: [{ code: 'bodies-cross' }],
    });
    expect(result.ok && result.value[0]?.shared?.()).toBe(7);
    // Without another measure the kernel's own: 1 x 2 x 2 of the post is in the blade.
    const own = run([blade, post], [])[0];
    expect(own?.shared?.()).toBeCloseTo(4, 9);
    if (!own) throw new Error('no pair');
    const terms = { id: 'x', label: 'blade to post', basis: '', fix: 'Move it.' };
    const told = withShared(pairResult(own, terms), own.shared);
    expect(told.shared).toBeCloseTo(4, 9);
    expect(told.message).toContain('Both fill 4.000 mm³ there.');
    const within = block('within', [0, 3, 10], [1, 4, 12]);
    expect(run([blade, within], [])[0]?.issues[0]?.code).toBe('body-inside');
  });

  it('nothing passes because something is missing', () => {
    const missing = checkPairs([blade], [onSeat], options);
    expect(missing).toMatchObject({ ok: false, issues: [{ code: 'body-missing' }] });
    const twice = checkPairs([blade, blade], [], options);
    expect(twice).toMatchObject({ ok: false, issues: [{ code: 'name-twice' }] });
    const empty: Body = { name: 'empty', solids: [], chordError: 0 };
    const checks = run([empty, blade], []);
    expect(checks[0]).toMatchObject({ pass: false, issues: [{ code: 'body-empty' }] });
    const one: Sweep = { kind: 'still', label: '', pose: frame([0, 0, 0]) };
    const moved = { ...blade, motion: [one, one] };
    const other = { ...seat, motion: [one, one, one] };
    expect(run([moved, other], [])[0]).toMatchObject({
      pass: false,
      issues: [{ code: 'motions-differ' }],
    });
    const skew: Sweep = { kind: 'still', label: '', pose: frame([0, 0, 0], [1, 0.1, 0]) };
    expect(run([{ ...blade, motion: [skew] }, seat], [])[0]?.issues[0]?.code).toBe(
      'pose-not-rigid',
    );
    const flip: Sweep = {
      kind: 'glide',
      label: '',
      from: frame([0, 0, 0]),
      to: frame([0, 0, 0], [-1, 0, 0], [0, -1, 0]),
    };
    expect(clearance({ ...blade, motion: [flip] }, seat)).toMatchObject({
      ok: false,
      issues: [{ code: 'turn-too-wide' }],
    });
  });

  it('refuses shapes that bound no solid', () => {
    const open = mesh(
      [
        [0, 0, 0],
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 3, 2],
    );
    expect(prepare('open', { kind: 'mesh', mesh: open })).toMatchObject({
      ok: false,
      issues: [{ code: 'mesh-open' }],
    });
    expect(prepare('flat', { kind: 'box', frame: frame([0, 0, 0]), size: [1, 0, 1] }).ok).toBe(
      false,
    );
    expect(prepare('none', { kind: 'hulls', hulls: [] }).ok).toBe(false);
    expect(prepare('nan', { kind: 'hulls', hulls: [[[NaN, 0, 0]]] }).ok).toBe(false);
  });
});
