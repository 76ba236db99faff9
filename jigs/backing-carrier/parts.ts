import {
  all,
  chain,
  ok,
  path,
  radians,
  rectangle,
  text,
  type Part,
  type PlatePart,
  type Result,
  type StockPart,
  type Vec2,
  type Vertex,
} from '../../src/family/index.ts';
import { boughtParts } from '../shared/parts/bought.ts';
import { plate, type Workshop } from '../shared/parts/context.ts';
import { passage, tapped } from '../shared/parts/holes.ts';
import { SIZE, type Layout } from './layout.ts';
import type { Values } from './parameters.ts';
import type { CarrierItem } from './place.ts';

const words = text.family.backingCarrier.parts;

export interface Context extends Workshop {
  readonly v: Values;
  readonly l: Layout;
}

/** Vertices of an arc from angle to angle (degrees, anticlockwise), without its last point. */
const arc = (centre: Vec2, radius: number, from: number, to: number): Vertex => ({
  x: centre[0] + radius * Math.cos(radians(from)),
  y: centre[1] + radius * Math.sin(radians(from)),
  bulge: Math.tan(radians(to - from) / 4),
});

const corner = (x: number, y: number): Vertex => ({ x, y, bulge: 0 });

/** The front of a rib from its lower to its upper end: two round ends, and the face between. */
const faceOf = ({ v, l }: Context): Vertex[] => {
  const { round, bottom, top, front } = l;
  const r = round ? v.endRadius : SIZE.ribEnd;
  const half = round?.half ?? 0;
  const y = round ? round.centre[0] + (round.radius - r) * Math.cos(radians(half)) : front - r;
  return [
    arc([y, bottom + r], r, -90, -half),
    ...(round ? [arc(round.centre, round.radius, -half, half)] : [corner(front, bottom + r)]),
    arc([y, top - r], r, half, 90),
    corner(y, top),
  ];
};

/** How true the front is cut, mm: common practice, no source; what comes of it is told beside it. */
const FRONT = 0.05;

/** Radius off by where the height s of an arc is: dR = 8 R^2 ds / c^2 with the chord c = 2 R sin h. */
const radiusError = (half: number): number => (2 * FRONT) / Math.sin(radians(half)) ** 2;

/** One rib, profile in (y, z): its back on the platen, its ears over the ends of it. */
const rib = (c: Context): Result<PlatePart> => {
  const { v, l } = c;
  const { back, bottom, top } = l;
  const behind = back - SIZE.earReach;
  const ahead = back + SIZE.earFront;
  const [low, high] = [bottom - v.play, top + v.play];
  return plate(c, {
    id: 'rib',
    name: words.names.rib,
    quantity: l.ribs,
    thickness: v.plate,
    outline: path([
      corner(behind, low - SIZE.ear),
      corner(ahead, low - SIZE.ear),
      corner(ahead, bottom),
      ...faceOf(c),
      corner(ahead, top),
      corner(ahead, high + SIZE.ear),
      corner(behind, high + SIZE.ear),
      corner(behind, high),
      corner(back, high),
      corner(back, low),
      corner(behind, low),
    ]),
    holes: passage('bolt', l.bolts, 'M6', words.purpose.bolt),
    finish: l.round ? words.finish.round : words.finish.flat,
    notes: [words.notes.rib(l.ribs), ...(l.round ? [words.notes.round(l.round.radius)] : [])],
    tight: [
      l.round ? words.tight.round(FRONT, radiusError(l.round.half)) : words.tight.flat(FRONT),
    ],
  });
};

/** A cheek, profile in (y, z). */
const cheek = (c: Context): Result<PlatePart> => {
  const { v, l } = c;
  return plate(c, {
    id: 'cheek',
    name: words.names.cheek,
    quantity: 2,
    thickness: v.cheek,
    outline: rectangle(
      [l.cheek.back, l.bottom + SIZE.cheekEnd],
      [l.cheek.front, l.top - SIZE.cheekEnd],
    ),
    holes: [
      ...passage('bolt', l.bolts, 'M6', words.purpose.bolt),
      ...tapped('grip', l.screws, 'M5', words.purpose.screw),
    ],
    notes: [words.notes.cheek],
  });
};

/** Density of firm vegetable tanned leather, g/cm3 (from memory). */
const LEATHER = 0.95;

/** The soft backing, profile in (y, z), glued on the ribs: its ends carry the belt round. */
const leather = ({ v, l }: Context): StockPart => {
  const { endRadius: r, softThickness: t } = v;
  const [low, high] = [l.bottom, l.top];
  return {
    kind: 'stock',
    id: 'soft-backing',
    name: words.names.soft,
    quantity: 1,
    material: words.leather,
    density: LEATHER,
    finish: words.finish.soft,
    section: words.section(t, l.width, high - low),
    layers: [
      {
        profile: {
          outer: path([
            corner(0, 0),
            arc([t - r, r], r, -90, 0),
            corner(t, r),
            arc([t - r, high - low - r], r, 0, 90),
            corner(t - r, high - low),
            corner(0, high - low),
          ]),
          holes: [],
        },
        from: 0,
        to: l.width,
      },
    ],
    holes: [],
    crossHoles: [],
    notes: [words.notes.soft(r), words.notes.grain],
    tight: [],
  };
};

/** All parts: cut ones, the soft backing, then what is bought. */
export const partsOf = (c: Context, items: readonly CarrierItem[]): Result<Part[]> =>
  chain(all<Part>([rib(c), cheek(c), ...(c.l.round ? [] : [ok(leather(c))])]), (made) =>
    ok([...made, ...boughtParts(items)]),
  );
