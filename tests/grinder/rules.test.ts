import { describe, expect, it } from 'vitest';
import { clearance } from '../../src/check/distance/index.ts';
import { createWorkshop } from '../../src/check/workshop.ts';
import { withValue } from '../../src/core/path.ts';
import { machineBodies } from '../../src/family/grinder-bodies.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import { keepOutSide } from '../../src/grinder/keep-out.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderIssues } from '../../src/grinder/rules.ts';
import type { Grinder } from '../../src/grinder/schema.ts';

const off = (grinder: Grinder) => grinderIssues(grinder).filter(({ code }) => code === 'off-rest');

const boxed = (lean: number): string[] =>
  Object.values(grinderPresets).flatMap((preset) =>
    grinderIssues({ ...preset, lean })
      .filter(({ code }) => code === 'platen-in-box')
      .map(({ path }) => path),
  );

describe('a keep-out box behind a platen', () => {
  it('is told of once the platen has been leaned into it', () => {
    expect(boxed(0)).toEqual([]);
    expect(boxed(2)).toEqual([]);
    expect(new Set(boxed(5))).toEqual(new Set(['keepOuts.0.goes']));
  });

  it('leans with the platen where that is said, as a body and in the drawing', () => {
    const preset = Object.values(grinderPresets).find(({ keepOuts }) => keepOuts.length > 0);
    if (!preset) throw new Error('no preset has a box');
    const [issue] = grinderIssues({ ...preset, lean: 5 }).filter(
      ({ code }) => code === 'platen-in-box',
    );
    const { path = '', value = '' } = issue?.mend ?? {};
    const leaning = withValue({ ...preset, lean: 5 }, path, value);
    expect(grinderIssues(leaning).map(({ code }) => code)).not.toContain('platen-in-box');

    // What leans as one keeps its distance: no lean is the reference.
    const gap = (grinder: Grinder): number => {
      const [belt] = grinder.belts;
      const [backing] = grinder.backings;
      const bodies =
        belt && backing && machineBodies(grinder, belt, backing, WORLD, createWorkshop());
      if (!bodies?.ok || !bodies.value.platen || !bodies.value.guards) throw new Error('no bodies');
      const found = clearance(bodies.value.platen, bodies.value.guards);
      if (!found.ok) throw new Error(found.issues[0]?.message);
      return found.value.state === 'beyond' ? found.value.beyond : found.value.gap;
    };
    expect(gap(leaning)).toBeCloseTo(gap(preset), 2);
    expect(gap({ ...preset, lean: 5 })).toBeLessThan(gap(preset) - 3);

    // The upper corner at the platen, turned by hand.
    const [box] = leaning.keepOuts;
    if (!box) throw new Error('no box');
    const [cos, sin] = [Math.cos(Math.PI / 36), Math.sin(Math.PI / 36)];
    const [y, z] = [box.max[1], box.max[2]];
    const corner = keepOutSide(box, 5)[2];
    expect(corner?.[0]).toBeCloseTo(cos * y - sin * z, 9);
    expect(corner?.[1]).toBeCloseTo(sin * y + cos * z, 9);
  });
});

describe('slots and holes that a smaller rest no longer holds', () => {
  const tables = Object.values(grinderPresets).filter(({ rest }) => rest.kind === 'table');

  it('come back onto it at the values that are named', () => {
    let mended = 0;
    for (const preset of tables) {
      let grinder = withValue(withValue(preset, 'rest.width', 90), 'rest.depth', 60);
      for (let i = 0; i < 20 && off(grinder).length > 0; i += 1)
        for (const { mend } of off(grinder)) {
          expect(mend?.path).toMatch(/^rest\.pattern\./);
          if (mend) grinder = withValue(grinder, mend.path, mend.value);
          mended += 1;
        }
      expect(off(grinder)).toEqual([]);
    }
    expect(mended).toBeGreaterThan(3);
  });
});
