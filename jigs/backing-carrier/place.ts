import {
  SIDES,
  all,
  chain,
  compose,
  nut,
  nutPart,
  ok,
  setScrew,
  setScrewPart,
  threadedRodPart,
  washer,
  washerPart,
  type Frame,
  type HardwarePart,
  type Placement,
  type Result,
  type Vec3,
} from '../../src/family/index.ts';
import { along, bought } from '../shared/place/item.ts';
import { mutualTouches } from '../shared/place/place.ts';
import type { Layout } from './layout.ts';
import type { Values } from './parameters.ts';

/** A piece where it stands, in the frame of the platen. */
export interface CarrierItem {
  readonly name: string;
  readonly part: string;
  readonly frame: Frame;
  readonly touches: readonly string[];
  readonly bought?: HardwarePart;
}

const RIGHT: Vec3 = [1, 0, 0];
const LEFT: Vec3 = [-1, 0, 0];

/** A profile in (y, z) extruded along the stroke from `origin`. */
const alongStroke = (origin: Vec3): Frame => ({ origin, x: [0, 1, 0], y: [0, 0, 1], z: RIGHT });

export const ribName = (i: number): string => `rib-${String(i + 1)}`;

/** How far a rod ends beyond its nut, mm. */
const END = 1;

/** What washers and nuts of the rods lie on, from the middle: cheeks, or ribs without cheeks. */
const outerFace = ({ cheek }: Values, { cheekX, grip }: Layout): number =>
  cheekX + (grip ? cheek : 0);

/** Length of the rods through cheeks and ribs, whole millimetres. */
export const rodLength = (v: Values, l: Layout): number =>
  Math.ceil(
    2 * (outerFace(v, l) + washer('M6', 'plain').thickness + nut('M6', 'full').height + END),
  );

/** The shortest set screw that reaches from outside a cheek to the platen, mm. */
export const screwLength = ({ cheek }: Values, gap: number): number =>
  setScrew('M5').lengths.find((length) => length >= gap + Math.min(cheek, 4)) ?? NaN;

/** A rod with nuts and washers, through everything at one place. */
const bolt = (
  v: Values,
  l: Layout,
  [y, z]: readonly [number, number],
  i: number,
): Result<CarrierItem[]> =>
  chain(threadedRodPart('M6', rodLength(v, l)), (rod) => {
    const id = String(i + 1);
    const ring = washerPart('M6', 'plain');
    const thick = washer('M6', 'plain').thickness;
    const half = rodLength(v, l) / 2;
    const name = `rod-${id}`;
    const ends = ([RIGHT, LEFT] as const).flatMap((way): CarrierItem[] => {
      const side = way[0] > 0 ? 'right' : 'left';
      const sign = way[0];
      const cheek = `cheek-${side}`;
      const edge = sign > 0 ? ribName(l.ribs - 1) : ribName(0);
      const between = Array.from({ length: l.washers }, (_, k): CarrierItem => ({
        name: `spacer-${side}-${id}-${String(k + 1)}`,
        ...bought(ring),
        frame: along([sign * (l.width / 2 + k * thick), y, z], way),
        touches: [name, cheek, edge, `spacer-${side}-${id}-${String(k + 2)}`],
      }));
      const out = outerFace(v, l);
      return [
        ...between,
        {
          name: `washer-${side}-${id}`,
          ...bought(ring),
          frame: along([sign * out, y, z], way),
          touches: [name, l.grip ? cheek : edge, `nut-${side}-${id}`],
        },
        {
          name: `nut-${side}-${id}`,
          ...bought(nutPart('M6', 'full')),
          frame: along([sign * (out + thick), y, z], way),
          touches: [name],
        },
      ];
    });
    const ribs = Array.from({ length: l.ribs }, (_, k) => ribName(k));
    return ok([
      {
        name,
        ...bought(rod),
        frame: along([-half, y, z], RIGHT),
        touches: [...ribs, 'cheek-left', 'cheek-right'],
      },
      ...ends,
    ]);
  });

/** Set screws through the cheeks against the sides of the platen, `across` wide. */
const grips = (v: Values, l: Layout, across: number): Result<CarrierItem[]> => {
  const { grip } = l;
  if (!grip) return ok([]);
  const length = screwLength(v, l.cheekX - across / 2);
  return chain(setScrewPart('M5', length), (screw) =>
    ok(
      grip.screws.flatMap(([y, z], i) =>
        ([RIGHT, LEFT] as const).map((way): CarrierItem => {
          const side = way[0] > 0 ? 'right' : 'left';
          return {
            name: `grip-${side}-${String(i + 1)}`,
            ...bought(screw),
            frame: along([way[0] * (across / 2 + length), y, z], way),
            touches: [`cheek-${side}`],
          };
        }),
      ),
    ),
  );
};

/** The nuts of the platen's bolts in the slots of the ribs. */
const slotNuts = ({ slots }: Layout): CarrierItem[] =>
  slots
    ? slots.at.map((z, i): CarrierItem => ({
        name: `platen-nut-${String(i + 1)}`,
        ...bought(nutPart(slots.thread, 'full')),
        frame: along([0, slots.seat, z], [0, 1, 0]),
        touches: [...slots.ribs].map(ribName),
      }))
    : [];

/** Everything placed, in the frame of the platen, `across` wide. */
export const itemsOf = (v: Values, l: Layout, across: number): Result<CarrierItem[]> => {
  const ribs = Array.from({ length: l.ribs }, (_, i): CarrierItem => ({
    name: ribName(i),
    part: l.slots?.ribs.has(i) ? 'rib-slotted' : 'rib',
    frame: alongStroke([-l.width / 2 + i * v.plate, 0, 0]),
    touches: [
      ribName(i + 1),
      ...(i === 0 && l.washers === 0 ? ['cheek-left'] : []),
      ...(i === l.ribs - 1 && l.washers === 0 ? ['cheek-right'] : []),
      'soft-backing',
    ],
  }));
  const sides = l.grip ? SIDES : [];
  const cheeks = sides.map((side): CarrierItem => ({
    name: `cheek-${side}`,
    part: 'cheek',
    frame: alongStroke([side === 'left' ? -l.cheekX - v.cheek : l.cheekX, 0, 0]),
    touches: [],
  }));
  const soft: CarrierItem[] = l.round
    ? []
    : [
        {
          name: 'soft-backing',
          part: 'soft-backing',
          frame: alongStroke([-l.width / 2, l.front, l.bottom]),
          touches: [],
        },
      ];
  return chain(all([...l.bolts.map((at, i) => bolt(v, l, at, i)), grips(v, l, across)]), (lists) =>
    ok([...ribs, ...cheeks, ...soft, ...lists.flat(), ...slotNuts(l)]),
  );
};

/** The assembly where the platen stands. */
export const placed = (items: readonly CarrierItem[], platen: Frame): Placement[] => {
  const mutual = mutualTouches(items);
  return items.map(({ name, part, frame }) => ({
    part,
    name,
    frame: compose(platen, frame),
    carrier: 'ground',
    touches: mutual(name),
  }));
};
