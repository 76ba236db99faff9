import {
  all,
  buttonScrewPart,
  capScrewPart,
  chain,
  dowelPinPart,
  nutPart,
  ok,
  scale3,
  add3,
  setScrewPart,
  washerPart,
  type Result,
  type Thread,
  type Vec3,
} from '../../../src/family/index.ts';
import { along, bought, numbered } from '../../shared/place/item.ts';
import type { Context } from '../context.ts';
import { BASE, HEEL } from '../layout/sizes.ts';
import { angleScrews } from '../parts/sole.ts';
import { ringsHeight, type Washered } from '../screws.ts';
import type { Group, Item } from './item.ts';

const UP: Vec3 = [0, 0, 1];
const DOWN: Vec3 = [0, 0, -1];
const BACK: Vec3 = [0, 1, 0];
const FORTH: Vec3 = [0, -1, 0];

interface Screwed {
  readonly name: string;
  readonly thread: Thread;
  /** Its length, and the washers under its head. */
  readonly screw: Washered;
  /** Low, domed head; a cap screw unless stated. */
  readonly low?: boolean;
  /** Places under the head or its washer, and the way the head points. */
  readonly at: readonly Vec3[];
  readonly head: Vec3;
  readonly group: Group;
  readonly through: readonly string[];
}

/** Screws of one kind with the washers under their heads. */
const screwed = (s: Screwed): Result<Item[]> =>
  chain((s.low ? buttonScrewPart : capScrewPart)(s.thread, s.screw.length), (screw) => {
    const { rings } = s.screw;
    const items = s.at.flatMap((place, i): Item[] => {
      const name = numbered(s.name, s.at.length, i);
      const ring = (k: number): string => `${name}-washer-${String(k + 1)}`;
      const at = (k: number): Vec3 =>
        add3(place, scale3(s.head, ringsHeight(s.thread, rings.slice(0, k))));
      const under = rings.map((series, k): Item => ({
        name: ring(k),
        ...bought(washerPart(s.thread, series)),
        group: s.group,
        frame: along(at(k), s.head),
        touches: [...s.through, name, ring(k + 1)],
      }));
      return [
        {
          name,
          ...bought(screw),
          group: s.group,
          frame: along(at(rings.length), s.head),
          touches: s.through,
        },
        ...under,
      ];
    });
    return ok(items);
  });

const pair = (x: number, y: number, z: number): Vec3[] => [
  [-x, y, z],
  [x, y, z],
];

/** Screws and pins of base and fence. */
const baseItems = ({ v, l, mount, screws, restThickness }: Context): Result<Item[]>[] => {
  const bars = mount.kind === 'bars';
  const grip = restThickness + (bars ? v.plate : 0);
  const y = l.fence.rear - l.fence.depth / 2;
  return [
    screwed({
      name: 'fence-screw',
      thread: 'M6',
      screw: screws.fence,
      // The sole dips over them as the carriage tips.
      low: true,
      at: pair(l.fence.screwX, y, v.plate),
      head: UP,
      group: 'base',
      through: ['fence', 'base'],
    }),
    screwed({
      name: 'mount-screw',
      thread: mount.thread,
      screw: screws.mount,
      at: mount.at.map(([x, at]): Vec3 => [x, at, -v.base - grip]),
      head: DOWN,
      group: 'base',
      through: ['base', 'clamp-bar-1', 'clamp-bar-2'],
    }),
    chain(dowelPinPart(BASE.pin, BASE.pinLength), (pin) =>
      ok(
        pair(l.base.pinX, l.base.pinY, -v.base).map((at, i): Item => ({
          name: `stop-pin-${String(i + 1)}`,
          ...bought(pin),
          group: 'base',
          frame: along(at, UP),
          touches: ['base', 'foot-bar'],
        })),
      ),
    ),
  ];
};

/** Screws that hold foot, push block and angle under and on the sole. */
const soleItems = (c: Context): Result<Item[]>[] => {
  const { l, screws } = c;
  const footTop = l.soleTop + (l.plates ? 0 : l.wall);
  const through = ['sole', 'foot-strip', 'foot-bar', 'upright-angle'];
  return [
    screwed({
      name: 'foot-screw',
      thread: 'M5',
      screw: screws.foot,
      at: pair(l.foot.screwX, 0, footTop),
      head: UP,
      group: 'carriage',
      through,
    }),
    screwed({
      name: 'push-screw',
      thread: 'M5',
      screw: { length: screws.palm, rings: [] },
      at: pair(l.palm.screwX, l.palm.screwY, l.soleTop),
      head: UP,
      group: 'carriage',
      through: ['sole', 'push-block', 'push-nut-1', 'push-nut-2'],
    }),
    ok(
      pair(l.palm.screwX, l.palm.screwY, l.palm.bottom + l.palm.pocket).map((at, i): Item => ({
        name: `push-nut-${String(i + 1)}`,
        ...bought(nutPart('M5', 'full')),
        group: 'carriage',
        frame: along(at, DOWN),
        touches: ['push-block', `push-screw-${String(i + 1)}`],
      })),
    ),
    ...(l.plates
      ? []
      : [
          screwed({
            name: 'angle-screw',
            thread: 'M6',
            screw: screws.angle,
            at: angleScrews(c).map(([x, y]): Vec3 => [x, y, l.soleTop + l.wall]),
            head: UP,
            group: 'carriage',
            through: ['sole', 'upright-angle'],
          }),
        ]),
  ];
};

/** Nuts on the heel screw: the lock nut stays on the sole, the others go with the knob. */
const heelItems = ({ v, l }: Context): Item[] => {
  const at = (z: number): Vec3 => [0, v.length, z];
  const nuts: [string, 'full' | 'thin', number, Group][] = [
    ['heel-lock-nut', 'thin', l.soleTop, 'carriage'],
    ['knob-lock-nut', 'thin', l.heel.under, 'heel'],
    ['knob-nut', 'full', l.heel.knob + HEEL.knobWeb, 'heel'],
  ];
  return nuts.map(([name, kind, z, group]): Item => ({
    name,
    ...bought(nutPart('M6', kind)),
    group,
    frame: along(at(z), UP),
    touches: ['heel-screw', name === 'heel-lock-nut' ? 'sole' : 'knob'],
  }));
};

/** Clamp screw from behind the upright, jack screw against its face; the jaw's x is 0. */
const jawItems = ({ l, screws }: Context): Result<Item[]>[] => {
  const upright = ['upright', 'upright-angle'];
  return [
    screwed({
      name: 'clamp-screw',
      thread: 'M6',
      screw: screws.clamp,
      at: [[0, l.front + l.wall, l.jawScrew]],
      head: BACK,
      group: 'jaw',
      through: [...upright, 'jaw'],
    }),
    chain(setScrewPart('M6', screws.jack), (jack) =>
      ok([
        {
          name: 'jack-screw',
          ...bought(jack),
          group: 'jaw' as const,
          frame: along([0, l.front - screws.jack, l.jawJack], FORTH),
          touches: [...upright, 'jaw'],
        },
      ]),
    ),
  ];
};

/** Every screw, washer, nut and pin of the fixture. */
export const screwItems = (c: Context): Result<Item[]> =>
  chain(all([...baseItems(c), ...soleItems(c), ...jawItems(c)]), (lists) =>
    ok([...lists.flat(), ...heelItems(c)]),
  );
