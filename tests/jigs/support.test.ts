import { expect, it } from 'vitest';
import { supportChecks } from '../../jigs/shared/checks/support.ts';
import { shift } from '../../src/geometry/frame.ts';
import { WORLD, type BladePose } from '../../src/family/index.ts';
import { examplesOf } from '../family/examples.ts';

const [example] = examplesOf('spine-rest');
const [like] = example?.design.blades ?? [];
if (!like) throw new Error('no blade');
/** 180 mm long, with 10 mm of its own stock before the plunge. */
const blade = {
  ...like,
  name: 'one',
  ricasso: 10,
  outline: { ...like.outline, length: 180 },
} as typeof like;

/** The blade with its plunge so far along the stroke, x from the middle of what it lies on. */
const pose = (setting: string, plunge: number): BladePose => ({
  setting,
  blade: 'one',
  u: 0,
  frame: shift(WORLD, [plunge, 0, 0]),
});

// By hand: what lies from -60 to 60 mm is 120 mm long, less what stands off it at either end.
it('a blade lies on its rest with its ricasso, and where it does least', () => {
  const strokes: Record<string, readonly BladePose[]> = {
    near: [pose('near', -20), pose('near', -130)],
    far: [pose('far', -5), pose('far', -150)],
  };
  const settings = Object.keys(strokes).map((id) => ({ id, blades: [{ blade: 'one' }] }));
  const asked = {
    settings,
    blades: [blade],
    poses: (setting: string) => strokes[setting] ?? [],
    half: 60,
    least: 30,
    labels: { supportHeel: 'heel', supportTip: 'tip' },
    fix: 'x',
    wider: 'wing',
  };
  const found = (over: Partial<typeof asked> = {}) =>
    supportChecks({ ...asked, ...over } as unknown as Parameters<typeof supportChecks>[0]).map(
      (check) => [check.found, check.passed, check.pose?.setting],
    );
  // Plunge at -5: from -15 to 60. Tip at 180 - 150: from -60 to 30.
  expect(found()).toEqual([
    [75, true, 'far'],
    [90, true, 'far'],
  ]);
  // A stroke of which nothing is known comes before all others.
  expect(found({ poses: (id) => (id === 'near' ? (strokes['near'] ?? []) : []) })).toEqual([
    [null, false, 'far'],
    [null, false, 'far'],
  ]);
});
