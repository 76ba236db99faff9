import { describe, expect, it } from 'vitest';
import { createWorkshop } from '../../src/check/workshop.ts';
import { machineBodies, type MachinePart } from '../../src/family/grinder-bodies.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import type { Grinder } from '../../src/grinder/schema.ts';
import type { Vec3 } from '../../src/geometry/vector.ts';
import { blockMesh, body, gap } from '../check/shapes.ts';
import { valueOf } from '../family/examples.ts';

// What keeps clear of a machine keeps clear of these bodies: blocks a known way off each face of them,
// by the numbers of the grinder file alone.

/** How far a thin block about a point, so far out along an axis, stays from a body of the machine. */
const offFace = (grinder: Grinder, part: MachinePart, at: Vec3, axis: 0 | 1 | 2, way: 1 | -1) => {
  const [belt, backing] = [grinder.belts.at(-1), grinder.backings.at(-1)];
  if (!belt || !backing) throw new Error('no belt');
  const bodies = valueOf(machineBodies(grinder, belt, backing, WORLD, createWorkshop()));
  const machine = bodies[part];
  if (!machine) throw new Error(`no ${part}`);
  const low = at.map((x, k) => (k === axis ? x + (way > 0 ? 1 : -2) : x - 0.25)) as unknown as Vec3;
  const high = at.map((x, k) =>
    k === axis ? x + (way > 0 ? 2 : -1) : x + 0.25,
  ) as unknown as Vec3;
  return gap(body('probe', [{ kind: 'mesh', mesh: blockMesh(low, high) }]), machine, { within: 5 });
};

describe.each(['platen-50', 'platen-75'])('the bodies of %s', (name) => {
  const grinder = grinderPresets[name];
  if (!grinder || grinder.platen.kind === 'none' || grinder.rest.kind !== 'table')
    throw new Error('another preset');
  const { platen, rest, belt } = grinder;
  const [worn, backing] = [grinder.belts.at(-1), grinder.backings.at(-1)];
  const support = platen.liner + (backing?.thickness ?? NaN);
  const middle = (platen.bottom + platen.top) / 2;
  const one = (part: MachinePart, at: Vec3, axis: 0 | 1 | 2, way: 1 | -1): void =>
    expect(offFace(grinder, part, at, axis, way)).toBeCloseTo(1, 3);

  it('have a belt as thick as it runs and as wide as it wanders', () => {
    const front = support + (worn?.thickness ?? NaN) + belt.flutter + belt.splice;
    one('belt', [0, front, middle], 1, 1);
    const side = belt.width / 2 + belt.tracking;
    one('belt', [side, support + 0.5, middle], 0, 1);
    one('belt', [-side, support + 0.5, middle], 0, -1);
  });

  it('have a platen as wide as it is, its face where the belt is backed', () => {
    one('platen', [0, support, middle], 1, 1);
    one('platen', [platen.width / 2, 0, middle], 0, 1);
    one('platen', [-platen.width / 2, 0, middle], 0, -1);
    one('platen', [0, 0, platen.top], 2, 1);
    one('platen', [0, 0, platen.bottom], 2, -1);
  });

  it('have wheels as wide as they are to both sides, and round', () => {
    for (const { centre, width, diameter } of grinder.wheels) {
      const [y, z] = centre;
      one('wheels', [width / 2, y, z], 0, 1);
      one('wheels', [-width / 2, y, z], 0, -1);
      one('wheels', [0, y, z + diameter / 2], 2, 1);
    }
  });

  it('have the rest before the platen, its top at nought', () => {
    const inside = rest.gap + rest.depth / 2;
    one('rest', [0, rest.gap, -1], 1, -1);
    one('rest', [0, rest.gap + rest.depth, -1], 1, 1);
    one('rest', [rest.width / 2, inside, -1], 0, 1);
    one('rest', [0, inside, 0], 2, 1);
    one('rest', [0, inside, -rest.thickness], 2, -1);
  });
});
