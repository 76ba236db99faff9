import {
  chain,
  clearanceHole,
  type CrossHole,
  type Hole,
  materialOf,
  path,
  type PlatePart,
  polygon,
  type Result,
  rounded,
  slot,
  type StockPart,
  tan,
  type Vec2,
} from '../../../src/family/index.ts';
import { plate } from '../../shared/parts/context.ts';
import { passage } from '../../shared/parts/holes.ts';
import type { Context } from '../context.ts';
import { GUSSET } from '../layout/sizes.ts';
import { angleScrews, tabSlots } from './sole.ts';
import { roundingOf, words } from './words.ts';

/** Passages of the clamp screws at both ends; slots where turned tangs ask for other heights. */
const clampHoles = ({ l }: Context): Hole[] => {
  const z = l.jawScrew - l.soleTop;
  const drop = Math.max(0, ...l.jawDrops);
  if (drop < 0.3) {
    const at: Vec2[] = [
      [-l.jawX, z],
      [l.jawX, z],
    ];
    return passage('clamp', at, 'M6', words.purpose.clampPassage);
  }
  const { diameter, standard } = clearanceHole('M6', 'normal');
  return [-l.jawX, l.jawX].map((x, i): Hole => ({
    id: `clamp-${String(i + 1)}`,
    loop: slot([x, z - drop], [x, z], diameter),
    at: [x, z - drop / 2],
    size: diameter,
    slotLength: drop + diameter,
    purpose: `${words.purpose.clampSlot} (${standard})`,
  }));
};

/** The upright of plates: x along the stroke, y up from the sole; ears behind the jaws. */
export const upright = (c: Context): Result<PlatePart> => {
  const { v, l } = c;
  const [middle, ear] = [l.middleTop - l.soleTop, l.earTop - l.soleTop];
  const inner = l.jawX - v.jawWidth / 2 - 3;
  const r = roundingOf(c, v.plate);
  const corners: [Vec2, number][] =
    ear - middle > 2
      ? [
          [[-l.half, 0], 0],
          [[l.half, 0], 0],
          [[l.half, ear], r],
          [[inner, ear], 0],
          [[inner, middle], 0],
          [[-inner, middle], 0],
          [[-inner, ear], 0],
          [[-l.half, ear], r],
        ]
      : [
          [[-l.half, 0], 0],
          [[l.half, 0], 0],
          [[l.half, ear], r],
          [[-l.half, ear], r],
        ];
  const tabs = l.gusset.xs.map((x): Vec2 => [x, GUSSET.tabFrom + GUSSET.tab / 2]);
  return chain(
    rounded(
      corners.map(([at]) => at),
      corners.map(([, radius]) => radius),
    ),
    (outline) =>
      plate(c, {
        id: 'upright',
        name: words.names.upright,
        thickness: v.plate,
        outline,
        holes: [...clampHoles(c), ...tabSlots(c, tabs, 'y')],
        finish: words.finish.upright,
        notes: [words.notes.face, words.notes.kerf(v.tabPlay), words.notes.weld],
      }),
  );
};

/** A gusset: x back from the upright, y up from the sole, a tab into each. */
export const gusset = (c: Context): Result<PlatePart> => {
  const { length, height } = c.l.gusset;
  const depth = c.v.plate - GUSSET.short;
  const [from, to] = [GUSSET.tabFrom, GUSSET.tabFrom + GUSSET.tab];
  return plate(c, {
    id: 'gusset',
    name: words.names.gusset,
    quantity: c.l.gusset.xs.length,
    thickness: c.v.plate,
    outline: polygon([
      [0, 0],
      [from, 0],
      [from, -depth],
      [to, -depth],
      [to, 0],
      [length, 0],
      [length, GUSSET.toe],
      [GUSSET.toe, height],
      [0, height],
      [0, to],
      [-depth, to],
      [-depth, from],
      [0, from],
    ]),
    holes: [],
    notes: [words.notes.tab(GUSSET.short), words.notes.corners],
  });
};

/** The bought angle: foot along x, leg up along y, sawn to length along z. */
export const angle = (c: Context): StockPart | undefined => {
  const { l } = c;
  if (!l.angle) return undefined;
  const { leg, wall, root } = l.angle;
  const { name, density } = materialOf('steel');
  const hole = (
    id: string,
    face: 'x' | 'y',
    at: Vec2,
    thread: 'M5' | 'M6',
    purpose: string,
  ): CrossHole => {
    const { diameter, standard } = clearanceHole(thread, 'normal');
    return { id, face, at, size: diameter, depth: 'through', purpose: `${purpose} (${standard})` };
  };
  const p = words.purpose;
  return {
    kind: 'stock',
    id: 'upright-angle',
    name: words.names.angle,
    quantity: 1,
    material: name,
    density,
    finish: words.finish.stock,
    section: words.section.angle(leg, wall),
    layers: [
      {
        profile: {
          outer: path([
            { x: 0, y: 0, bulge: 0 },
            { x: leg, y: 0, bulge: 0 },
            { x: leg, y: wall, bulge: 0 },
            { x: wall + root, y: wall, bulge: -tan(Math.PI / 8) },
            { x: wall, y: wall + root, bulge: 0 },
            { x: wall, y: leg, bulge: 0 },
            { x: 0, y: leg, bulge: 0 },
          ]),
          holes: [],
        },
        from: 0,
        to: 2 * l.half,
      },
    ],
    holes: [],
    crossHoles: [
      ...angleScrews(c).map(([x, y], i) =>
        hole(`screw-${String(i + 1)}`, 'y', [y - l.front, x + l.half], 'M6', p.uprightPassage),
      ),
      ...[-1, 1].map((side, i) =>
        hole(
          `foot-${String(i + 1)}`,
          'y',
          [-l.front, side * l.foot.screwX + l.half],
          'M5',
          p.footPassage,
        ),
      ),
      ...[-1, 1].map((side, i) =>
        hole(
          `clamp-${String(i + 1)}`,
          'x',
          [l.jawScrew - l.soleTop, side * l.jawX + l.half],
          'M6',
          p.clampPassage,
        ),
      ),
    ],
    notes: [words.notes.face, words.notes.angle, words.notes.template],
    tight: [],
  };
};
