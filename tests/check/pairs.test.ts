import { describe, expect, it } from 'vitest';
import { frame, type Frame } from '../../src/geometry/frame.ts';
import { answer, clear } from '../../src/check/answers.ts';
import { pairResult, withShared } from '../../src/check/assembly-result.ts';
import { checkPair, type PairCheck, type PairRule } from '../../src/check/distance/pairs.ts';
import { prepare } from '../../src/check/distance/prepare.ts';
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

const options = { within: 20 };
const apart = (gap = 1): PairRule => ({ kind: 'clear', a: '', b: '', gap });
const run = (a: Body, b: Body, rule: PairRule = apart()): PairCheck =>
  checkPair(a, b, rule, options);
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

describe('pairs', () => {
  it('are held against what is asked of them', () => {
    expect(run(blade, seat, onSeat).pass).toBe(true);
    expect(run(blade, step, onStep).pass).toBe(true);
    const free = run(blade, wheel);
    expect(free).toMatchObject({ a: 'blade', b: 'wheel', pass: true });
    expect(free.clearance).toMatchObject({ state: 'apart' });
    // Of what is more than 2 mm beyond the gap asked, a twentieth may be left untold.
    const [asked, away] = [1, 12];
    const told = free.clearance?.state === 'apart' ? free.clearance : undefined;
    expect(told?.gap).toBeLessThan(away + 0.001);
    expect(told?.gap).toBeGreaterThan(away - (away - asked - 2) / 20 - 0.001);
    expect((told?.gap ?? 0) + (told?.error ?? 0)).toBeGreaterThan(away - 1e-9);
  });

  it('a rule that asks for more fails with both names and numbers', () => {
    const near = run(wheel, blade, apart(15));
    expect(near).toMatchObject({ pass: false, issues: [{ code: 'clearance-too-small' }] });
    const message = near.issues[0]?.message ?? '';
    for (const word of ['wheel', 'blade', '15.000']) expect(message).toContain(word);
    // More than `within` is asked: it is measured up to what is asked.
    expect(run(wheel, blade, apart(30)).pass).toBe(false);
  });

  it('a contact that is open, too deep, or elsewhere fails', () => {
    const moved = (z: number, y = 0): Body => ({
      ...blade,
      motion: [{ kind: 'still', label: 'set', pose: frame([0, y, z]) }],
    });
    const codes = (b: Body) => run(b, seat, onSeat).issues.map((issue) => issue.code);
    expect(codes(moved(0))).toEqual([]);
    expect(codes(moved(0.04))).toEqual([]);
    expect(codes(moved(-0.04))).toEqual([]);
    expect(codes(moved(0.06))).toEqual(['contact-open']);
    expect(codes(moved(30))).toEqual(['contact-open']);
    expect(codes(moved(-0.06))).toContain('contact-too-deep');
    const aside: PairRule = { ...onSeat, region: { frame: frame([40, 10, 0]), size: [8, 20, 1] } };
    expect(run(blade, seat, aside).issues[0]?.code).toBe('contact-elsewhere');
    // Nothing is proved where neither a direction nor a volume is declared.
    const bare: PairRule = { kind: 'touch', a: 'blade', b: 'seat', tolerance: 0.05 };
    expect(run(blade, seat, bare).pass).toBe(false);
  });

  it('a contact is as open as its true faces are, chords taken for what they may leave', () => {
    const rough = (z: number): Body => ({
      ...blade,
      chordError: 0.02,
      motion: [{ kind: 'still', label: 'set', pose: frame([0, 0, z]) }],
    });
    expect(run(rough(0.02), seat, onSeat).pass).toBe(true);
    // 0.06 apart, of which chords may take 0.02: it may be open by more than 0.05.
    expect(run(rough(0.06), seat, onSeat).issues[0]?.code).toBe('contact-open');
  });

  it('a contact must lie in its region, which goes with the second body', () => {
    // The blade touches the seat from x = -5 to 5.
    const within = (x: number, pose = frame([0, 0, 0])): readonly string[] => {
      const region = { frame: frame([x, 10, 0]), size: [20, 20, 1] } as const;
      const carried: Body = { ...seat, motion: [{ kind: 'still', label: '', pose }] };
      const stood: Body = { ...blade, motion: [{ kind: 'still', label: '', pose }] };
      return run(stood, carried, { ...onSeat, region }).issues.map(({ code }) => code);
    };
    expect(within(0)).toEqual([]);
    // From 8 to 28: 3 mm beside it, though less than the region's own length away.
    expect(within(18)).toEqual(['contact-elsewhere']);
    expect(within(-18)).toEqual(['contact-elsewhere']);
    expect(within(0, frame([500, -70, 30]))).toEqual([]);
    expect(within(18, frame([500, -70, 30]))).toEqual(['contact-elsewhere']);
  });

  it('a contact must hold along the whole stroke, and its volume may be measured instead', () => {
    const along = (to: Frame): Body => {
      const stroke: Sweep = { kind: 'glide', label: 'stroke', from: frame([-20, 0, 0]), to };
      return { ...blade, motion: [stroke] };
    };
    expect(run(along(frame([20, 0, 0])), seat, onSeat).pass).toBe(true);
    const lifts = run(along(frame([20, 0, 1])), seat, onSeat);
    expect(lifts.issues[0]?.code).toBe('contact-open');
    const byVolume: PairRule = { kind: 'touch', a: 'blade', b: 'seat', tolerance: 0.05, volume: 1 };
    for (const [volume, pass] of [
      [0.5, true],
      [1.5, false],
      [undefined, false],
    ] as const) {
      const measured = { ...options, overlapVolume: () => volume };
      expect(checkPair(blade, seat, byVolume, measured).pass).toBe(pass);
    }
  });

  it('hits fail whatever gap is asked, and their volume is told', () => {
    const post = block('post', [0, 3, 10], [1, 30, 12]);
    const hit = checkPair(blade, post, apart(0), { within: 5, overlapVolume: () => 7 });
    expect(hit).toMatchObject({ pass: false, issues: [{ code: 'bodies-cross' }] });
    expect(hit.shared?.()).toBe(7);
    // Without another measure the kernel's own: 1 x 2 x 2 of the post is in the blade.
    const own = run(blade, post);
    expect(own.shared?.()).toBeCloseTo(4, 9);
    const terms = { id: 'x', label: 'blade to post', basis: '', fix: 'Move it.' };
    const told = withShared(pairResult(own, terms), own.shared);
    expect(told.shared).toBeCloseTo(4, 9);
    expect(told.message).toContain('Both fill 4.000 mm³ there.');
    const within = block('within', [0, 3, 10], [1, 4, 12]);
    expect(run(blade, within).issues[0]?.code).toBe('body-inside');
  });

  it('nothing passes because something is missing', () => {
    const there = new Map([blade, wheel].map((one) => [one.name, one]));
    const told = { names: {}, pose: () => undefined };
    const ask = (b: string) => answer([clear('blade', b, 1, '')], there, told);
    expect(ask('wheel')).toMatchObject([{ passed: true }]);
    expect(ask('guard')).toMatchObject([
      { passed: false, found: null, message: expect.stringContaining('guard is not there') },
    ]);
    // A grinder may have no platen: nothing is asked of what no machine of its kind has.
    expect(ask('platen')).toEqual([]);
    const empty: Body = { name: 'empty', solids: [], chordError: 0 };
    expect(run(empty, blade)).toMatchObject({ pass: false, issues: [{ code: 'body-empty' }] });
    const one: Sweep = { kind: 'still', label: '', pose: frame([0, 0, 0]) };
    const moved = { ...blade, motion: [one, one] };
    const other = { ...seat, motion: [one, one, one] };
    expect(run(moved, other)).toMatchObject({
      pass: false,
      issues: [{ code: 'motions-differ' }],
    });
    const skew: Sweep = { kind: 'still', label: '', pose: frame([0, 0, 0], [1, 0.1, 0]) };
    expect(run({ ...blade, motion: [skew] }, seat).issues[0]?.code).toBe('pose-not-rigid');
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
