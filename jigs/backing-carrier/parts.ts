import {
  all,
  chain,
  cos,
  ok,
  type Part,
  path,
  type PlatePart,
  radians,
  rectangle,
  type Result,
  sin,
  type StockPart,
  tan,
  text,
  type Vec2,
  type Vertex,
} from '../../src/family/index.ts';
import { boughtParts } from '../shared/parts/bought.ts';
import { plate, type Workshop } from '../shared/parts/context.ts';
import { passage, tapped } from '../shared/parts/holes.ts';
import { arcCheck } from './arc-check.ts';
import { SIZE, type Layout } from './layout.ts';
import type { Values } from './parameters.ts';
import type { CarrierItem } from './place.ts';
import type { Slots } from './slots.ts';

const words = text.family.backingCarrier.parts;

export interface Context extends Workshop {
  readonly v: Values;
  readonly l: Layout;
}

/** Vertices of an arc from angle to angle (degrees, anticlockwise), without its last point. */
const arc = (centre: Vec2, radius: number, from: number, to: number): Vertex => ({
  x: centre[0] + radius * cos(radians(from)),
  y: centre[1] + radius * sin(radians(from)),
  bulge: tan(radians(to - from) / 4),
});

const corner = (x: number, y: number): Vertex => ({ x, y, bulge: 0 });

/** The front of a rib from its lower to its upper end: two round ends, and the face between. */
const faceOf = ({ v, l }: Context): Vertex[] => {
  const { round, bottom, top, front } = l;
  const r = round ? v.endRadius : SIZE.ribEnd;
  const half = round?.half ?? 0;
  const y = round ? round.centre[0] + (round.radius - r) * cos(radians(half)) : front - r;
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
const radiusError = (half: number): number => (2 * FRONT) / sin(radians(half)) ** 2;

/** The back of a rib over the platen, from its upper end to its lower: ears over the ends of it. */
const eared = ({ v, l }: Context): { readonly front: Vertex[]; readonly back: Vertex[] } => {
  const { back, bottom, top } = l;
  const behind = back - SIZE.earReach;
  const ahead = back + SIZE.earFront;
  const [low, high] = [bottom - v.play, top + v.play];
  return {
    front: [corner(behind, low - SIZE.ear), corner(ahead, low - SIZE.ear), corner(ahead, bottom)],
    back: [
      corner(ahead, top),
      corner(ahead, high + SIZE.ear),
      corner(behind, high + SIZE.ear),
      corner(behind, high),
      corner(back, high),
      corner(back, low),
      corner(behind, low),
    ],
  };
};

/** The back of a rib in place of the platen, with slots for the nuts where it has them. */
const bolted = ({ l }: Context, slots: Slots | undefined) => {
  const { back, bottom, top } = l;
  const notches = [...(slots?.at ?? [])].sort((p, q) => q - p);
  return {
    front: [corner(back, bottom)],
    back: [
      corner(back, top),
      ...(slots
        ? notches.flatMap((z) => {
            const { neck, head, seat, end } = slots;
            return [
              corner(back, z + neck),
              corner(seat, z + neck),
              corner(seat, z + head),
              corner(end, z + head),
              corner(end, z - head),
              corner(seat, z - head),
              corner(seat, z - neck),
              corner(back, z - neck),
            ];
          })
        : []),
    ],
  };
};

/** Ribs of one kind, profile in (y, z): the back on the platen or on what carried it. */
const rib = (c: Context, slots?: Slots): Result<PlatePart> => {
  const { v, l } = c;
  const { front, back } = l.slots ? bolted(c, slots) : eared(c);
  const slotted = l.slots?.ribs.size ?? 0;
  const arc = l.round && arcCheck(l.round);
  return plate(c, {
    id: slots ? 'rib-slotted' : 'rib',
    name: slots ? words.names.slotted : words.names.rib,
    quantity: slots ? slotted : l.ribs - slotted,
    thickness: v.plate,
    outline: path([...front, ...faceOf(c), ...back]),
    holes: passage('bolt', l.bolts, 'M6', words.purpose.bolt),
    finish: l.round ? words.finish.round : words.finish.flat,
    notes: [
      words.notes.rib(l.ribs, slotted === 0 || slotted === l.ribs),
      ...(l.round && arc ? [words.notes.round(l.round.radius, arc.at, arc.feeler)] : []),
    ],
    tight: [
      l.round ? words.tight.round(FRONT, radiusError(l.round.half)) : words.tight.flat(FRONT),
    ],
  });
};

/** A cheek, profile in (y, z). */
const cheek = (c: Context, grip: NonNullable<Layout['grip']>): Result<PlatePart> => {
  const { v, l } = c;
  return plate(c, {
    id: 'cheek',
    name: words.names.cheek,
    quantity: 2,
    thickness: v.cheek,
    outline: rectangle([grip.back, l.bottom + SIZE.cheekEnd], [grip.front, l.top - SIZE.cheekEnd]),
    holes: [
      ...passage('bolt', l.bolts, 'M6', words.purpose.bolt),
      ...tapped('grip', grip.screws, 'M5', words.purpose.screw),
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
  chain(
    all<Part>([
      ...((c.l.slots?.ribs.size ?? 0) < c.l.ribs ? [rib(c)] : []),
      ...(c.l.slots ? [rib(c, c.l.slots)] : []),
      ...(c.l.grip ? [cheek(c, c.l.grip)] : []),
      ...(c.l.round ? [] : [ok(leather(c))]),
    ]),
    (made) => ok([...made, ...boughtParts(items)]),
  );
