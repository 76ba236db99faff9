import type { Vec2 } from '../../../src/family/index.ts';
import type { Values } from '../parameters.ts';
import type { Layout } from './layout.ts';
import { SIZE } from './sizes.ts';

/**
 * Where screws and pins stand in plan, seat frame with the base at its mean place. Every part
 * that a screw passes takes its hole from here, so that holes agree.
 */
export interface Stations {
  readonly nose: readonly Vec2[];
  /** Packer screws; with guide strips the screws through keeper, strip and packer. */
  readonly packer: readonly Vec2[];
  readonly bracket: readonly Vec2[];
  readonly lug: readonly Vec2[];
  /** Locking screws into the base; with guide strips the ones in the keepers instead. */
  readonly lock: readonly Vec2[];
  /** Guide pins; none with guide strips. */
  readonly pins: readonly Vec2[];
}

const pair = (x: number, y: number): Vec2[] => [
  [-x, y],
  [x, y],
];

export const stationsOf = (v: Values, l: Layout): Stations => {
  const strips = v.guide === 'strips';
  const stripX = Math.round(l.slide.half + l.packer.half) / 2;
  const wings = strips
    ? l.slide.keepers.flatMap((y) => pair(stripX, y))
    : [l.packer.front + 10, l.packer.back - 10].flatMap((y) => pair(l.nose.screwX, y));
  return {
    nose: pair(l.nose.screwX, l.nose.screwY),
    packer: wings,
    bracket: pair(l.feed.bracketScrewX, l.feed.bracketScrewY),
    lug: pair(l.feed.lugScrewX, l.feed.lugScrewY),
    lock: strips ? l.slide.keepers.map((y): Vec2 => [0, y]) : pair(l.slide.lockX, l.slide.lockY),
    pins: strips ? [] : l.slide.pins.map((y): Vec2 => [0, y]),
  };
};

/** What stands in the base already, with the radius to keep clear of. */
export const takenBy = (v: Values, s: Stations): { at: Vec2; radius: number }[] => {
  const inBase = [...s.nose, ...s.packer, ...s.bracket, ...(v.guide === 'slots' ? s.lock : [])];
  return [
    ...inBase.map((at) => ({ at, radius: 3 })),
    ...s.pins.map((at) => ({ at, radius: SIZE.guidePin / 2 })),
  ];
};
