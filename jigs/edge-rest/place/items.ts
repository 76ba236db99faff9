import {
  chain,
  countersunkScrewPart,
  ok,
  shift,
  type Frame,
  type Result,
  type Vec3,
} from '../../../src/family/index.ts';
import { along, bought, type Item } from '../../shared/place/item.ts';
import { itemsOf as sharedItems, type Items } from '../../shared/place/items.ts';
import type { EdgeContext } from '../context.ts';
import { LIP } from '../sizes.ts';

/** A profile in y and z, extruded along the stroke from `origin`. */
const alongStroke = (origin: Vec3): Frame => ({
  origin,
  x: [0, 1, 0],
  y: [0, 0, 1],
  z: [1, 0, 0],
});

/** The lip's face when the slide stands at the middle of its travel, seat frame. */
export const middleLip = ({ rig, x }: EdgeContext): number => rig.l.slide.front + x.lead;

/** Names of the pieces of the lip. */
const lipNames = ({ v }: EdgeContext): readonly string[] =>
  v.lip === 'strip'
    ? ['lip-strip', 'lip-packing-1', 'lip-packing-2']
    : ['lip-pad-1', 'lip-pad-2', 'lip-packing'];

const lipItems = (c: EdgeContext): Item[] => {
  const { v, x } = c;
  const group = 'step' as const;
  const [face, low] = [middleLip(c), -x.under];
  const front = face - v.lipThickness;
  const touches = ['step', 'wear-strip', ...lipNames(c)];
  const piece = (name: string, part: string, at: number, y: number): Item => ({
    name,
    part,
    group,
    frame: alongStroke([at, y, low]),
    touches: touches.filter((other) => other !== name),
  });
  return v.lip === 'strip'
    ? [
        piece('lip-strip', 'lip-strip', -x.lipEnd, front),
        piece('lip-packing-1', 'lip-packing', -x.half, face),
        piece('lip-packing-2', 'lip-packing', x.lipEnd, face),
      ]
    : [
        piece('lip-pad-1', 'lip-pad', -x.half, front),
        piece('lip-pad-2', 'lip-pad', x.lipEnd, front),
        piece('lip-packing', 'lip-packing', -x.lipEnd, face),
      ];
};

const seatItems = (c: EdgeContext): Result<Item[]> =>
  chain(countersunkScrewPart(LIP.thread, c.x.screwLength), (screw) => {
    const face = middleLip(c);
    const group = 'step' as const;
    const touching = ['step', 'wear-strip', ...lipNames(c)];
    return ok([
      {
        name: 'wear-strip',
        part: 'wear-strip',
        group,
        frame: alongStroke([-c.x.half, face, -c.v.wear]),
        touches: [...lipNames(c)],
      },
      ...c.x.screws.map((at, i): Item => ({
        name: `lip-screw-${String(i + 1)}`,
        ...bought(screw),
        group,
        frame: along([at, face + LIP.screw, 0], [0, 0, 1]),
        touches: touching,
      })),
    ]);
  });

/** The shared pieces where the edge rest has them. */
const moved =
  ({ x }: EdgeContext) =>
  (item: Item): Item => {
    const part = item.part === 'step' ? 'lip-slide' : item.part;
    return { ...item, part, frame: shift(item.frame, [0, 0, -x.rise]) };
  };

/** Everything placed: the shared mechanics, lip and seat; and what the blade carries. */
export const itemsOf = (c: EdgeContext): Result<Items> =>
  chain(sharedItems(c.rig), ({ machine, blade }) =>
    chain(seatItems(c), (seat) =>
      ok({
        machine: [...machine.map(moved(c)), ...lipItems(c), ...seat],
        blade: blade.map((item) => ({
          ...item,
          touches: item.touches.map((name) => (name === 'nose' ? 'step' : name)),
        })),
      }),
    ),
  );
