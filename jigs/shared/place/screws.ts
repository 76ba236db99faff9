import {
  all,
  capScrewPart,
  chain,
  dowelPinPart,
  nut,
  nutPart,
  ok,
  threadedRodPart,
  washer,
  washerPart,
  type NutKind,
  type Result,
  type Vec3,
} from '../../../src/family/index.ts';
import type { Joint } from '../layout/joints.ts';
import { FEED, SIZE } from '../layout/sizes.ts';
import { THREAD } from '../layout/threads.ts';
import type { Context } from '../parts/context.ts';
import { along, bought, numbered, type Item } from './item.ts';

const UP: Vec3 = [0, 0, 1];
const DOWN: Vec3 = [0, 0, -1];

/** A joint's screws with the washers under their heads. */
const jointItems = (joint: Joint): Result<Item[]> =>
  chain(capScrewPart(joint.thread, joint.length), (screw) => {
    const { thread, level, way, washers, group, through } = joint;
    const ring = washerPart(thread, washers.series);
    const { thickness } = washer(thread, washers.series);
    const head = way === 'down' ? UP : DOWN;
    const sign = head[2];
    const items = joint.at.flatMap(([x, y], i): Item[] => {
      const name = numbered(joint.name, joint.at.length, i);
      const rings = Array.from({ length: washers.count }, (_, k): Item => ({
        name: `${name}-washer-${String(k + 1)}`,
        ...bought(ring),
        group,
        frame: along([x, y, level + sign * k * thickness], head),
        touches: [name, ...through, `${name}-washer-${String(k)}`],
      }));
      const under = level + sign * washers.count * thickness;
      return [
        ...rings,
        {
          name,
          ...bought(screw),
          group,
          frame: along([x, y, under], head),
          touches: [...through, ...rings.map((r) => r.name)],
        },
      ];
    });
    return ok(items);
  });

/** Feed screw, the nuts that hold the lug on it and the two that clamp the knob. */
const feedItems = ({ l, feed }: Context): Result<Item[]> =>
  chain(threadedRodPart(THREAD.main, feed.length), (rod) => {
    const at = (y: number): Vec3 => [0, y, l.feed.axisZ];
    const full = nut(THREAD.main, 'full').height;
    const thin = nut(THREAD.main, 'thin').height;
    const towards: Vec3 = [0, 1, 0];
    const front = l.slide.back - FEED.wall;
    const nuts: [string, NutKind, number][] = [
      ['lug-nut-front', 'full', front - full],
      ['lug-lock-nut-front', 'thin', front - full - thin],
      ['lug-nut-rear', 'full', l.slide.back],
      ['lug-lock-nut-rear', 'thin', l.slide.back + full],
      ['knob-lock-nut', 'thin', feed.knobY - thin],
      ['knob-nut', 'full', feed.knobY + FEED.knobWeb],
    ];
    const names = nuts.map(([name]) => name);
    return ok([
      {
        name: 'feed-screw',
        ...bought(rod),
        group: 'step',
        frame: along(at(feed.frontY), towards),
        touches: ['feed-bracket', 'feed-lug', 'knob', ...names],
      },
      ...nuts.map(([name, kind, y]): Item => ({
        name,
        ...bought(nutPart(THREAD.main, kind)),
        group: 'step',
        frame: along(at(y), towards),
        touches: ['feed-screw', 'feed-lug', 'knob', ...names.filter((other) => other !== name)],
      })),
    ]);
  });

const pinItems = ({ s, pinLength, v }: Context): Result<Item[]> =>
  s.pins.length === 0
    ? ok([])
    : chain(dowelPinPart(SIZE.guidePin, pinLength), (pin) =>
        ok(
          s.pins.map(([x, y], i): Item => ({
            name: `guide-pin-${String(i + 1)}`,
            ...bought(pin),
            group: 'base',
            frame: along([x, y, v.plate - SIZE.pinBelow - pinLength], UP),
            touches: ['packer', 'base', 'step'],
          })),
        ),
      );

/** Two collar plates on the blade with their screws and nuts, blade coordinates (u, v, w). */
export const collarItems = ({ l, collarScrew }: Context): Result<Item[]> =>
  chain(capScrewPart(THREAD.collar, collarScrew), (screwPart) => {
    const { distance, bottom, gripped, thickness, lower, upper, width } = l.collar;
    const half = gripped / 2;
    const group = 'blade' as const;
    const plates = [-half, half + thickness].map((w, i): Item => ({
      name: `stop-collar-${String(i + 1)}`,
      part: 'stop-collar',
      group,
      frame: { origin: [-distance, bottom, w], x: [-1, 0, 0], y: [0, 1, 0], z: [0, 0, -1] },
      touches: ['nose'],
    }));
    const both = plates.map(({ name }) => name);
    const screws = [lower, upper].flatMap((v, i): Item[] => {
      const u = -distance - width / 2;
      const screw = `collar-screw-${String(i + 1)}`;
      const seat = half + thickness;
      return [
        {
          name: screw,
          ...bought(screwPart),
          group,
          frame: along([u, v, seat], UP),
          touches: [...both, `collar-nut-${String(i + 1)}`],
        },
        {
          name: `collar-nut-${String(i + 1)}`,
          ...bought(nutPart(THREAD.collar, 'full')),
          group,
          frame: along([u, v, -seat], DOWN),
          touches: [...both, screw],
        },
      ];
    });
    return ok([...plates, ...screws]);
  });

/** Every screw, washer, nut, pin and rod of base, nose and step. */
export const screwItems = (c: Context): Result<Item[]> =>
  chain(all([...c.joints.map(jointItems), feedItems(c), pinItems(c)]), (lists) => ok(lists.flat()));
