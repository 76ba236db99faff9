import { describe, expect, it } from 'vitest';
import { bodiesOf, splitThrough } from '../../src/drawing/bodies.ts';
import { FROM_BELOW, ISOMETRIC, projected } from '../../src/drawing/eye.ts';
import { ownersIn } from '../../src/drawing/owners.ts';
import { scene } from '../../src/drawing/scene.ts';
import { withoutHiddenTabs } from '../../src/drawing/tabs.ts';
import { place } from '../../src/geometry/frame.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { examplesOf, solved, valueOf } from '../family/examples.ts';

const camp = examplesOf('carriage').find(({ file }) => file.startsWith('camp'));
if (!camp) throw new Error('the worked design with gussets is gone');
const fixture = solved(camp);
const parts = valueOf(fixture.parts());
const placements = fixture.place(fixture.settings[0]?.id ?? '');
const whole = splitThrough(bodiesOf(parts, placements));

const gussets = whole.filter(({ owner }) => owner.startsWith('gusset'));

// The side of the tab in the sole, 4 mm below its top: a ray from there to the eye meets the wall of
// the slot within 0.1 mm.
const SIDE_OF_TAB: Vec3 = [20, -4, 8];

const area = ({ outer }: (typeof whole)[number]): number =>
  outer.reduce((sum, [x, y], i) => {
    const [a, b] = outer.at(i - 1) ?? [x, y];
    return sum + (a * y - x * b) / 2;
  }, 0);
const areaOf = (bodies: typeof whole): number =>
  bodies.filter(({ owner }) => owner === 'gusset-1').reduce((sum, body) => sum + area(body), 0);

describe('tabs in slots', () => {
  it('are hidden by the plate from the side of their root', () => {
    const owner = ownersIn(scene(whole, ISOMETRIC, 1));
    const shown = gussets.map(({ frame }) =>
      owner(projected(place(frame, SIDE_OF_TAB), ISOMETRIC, 1)),
    );
    expect(shown).toEqual(['sole', 'sole', 'sole', 'sole']);
  });

  it('are all that is taken off, and from that side only', () => {
    // Two tabs, each 14 mm wide and 0.3 mm shorter than the sheet is thick.
    const tabs = 2 * 14 * (8 - 0.3);
    expect(areaOf(withoutHiddenTabs(whole, ISOMETRIC))).toBeCloseTo(areaOf(whole) - tabs, 6);
    expect(areaOf(withoutHiddenTabs(whole, FROM_BELOW))).toBeCloseTo(areaOf(whole), 9);
  });
});
