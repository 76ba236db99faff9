import type { Frame } from '../../geometry/frame.ts';
import { outerFace } from '../hold/strip.ts';
import { frameOf } from '../pose.ts';
import { acrossStroke } from './stand.ts';
import type { Proved } from './types.ts';

/** Where a blade stood while place u was before the belt's middle. */
export interface StripPose {
  readonly setting: string;
  readonly blade: string;
  readonly u: number;
  /** Takes blade coordinates (u, v, w) to the seat frame. */
  readonly frame: Frame;
}

/**
 * How a blade stood at one setting of its strip, from the plunge stop to the strip's end: `count`
 * places as even as the virtual grind has them, all that it has where that is fewer.
 */
export const posesWithStrip = (
  { cured }: Proved,
  setting: string,
  count = Infinity,
): StripPose[] => {
  const result = cured.passes.find(({ pass }) => pass.id === setting);
  if (result === undefined) return [];
  const { reached, pass } = result;
  const [last, number] = [reached.length - 1, Math.min(count, reached.length)];
  return Array.from({ length: number }, (_, i) =>
    Math.round((last * i) / Math.max(1, number - 1)),
  ).flatMap((i) => {
    const at = reached[i];
    if (at === undefined) return [];
    const { name: blade } = cured.shape.blade;
    return [{ setting, blade, u: at.pose.m, frame: frameOf(at.pose, pass.side) }];
  });
};

/** Places along a seat at which a blade is looked at from behind. */
const LOOKS = [-1, -0.5, 0, 0.5, 1] as const;

/**
 * How far from the abrasive face, along the seat, blade and strip reach anywhere over a seat that is
 * 2 `half` long, mm: on a rounded step a blade yaws, and one of its ends swings back.
 */
export const swingWithStrip = ({ cured }: Proved, half: number): number => {
  const { shape } = cured;
  const reaches = cured.passes.flatMap(({ pass: { holding }, reached }) => {
    const strip = holding.kind === 'spine-rest' ? holding.strip : undefined;
    return reached.flatMap(({ pose }) =>
      LOOKS.map((share) => {
        const u = Math.min(pose.m + share * half, shape.length);
        const flank = shape.thickness.value(Math.max(u, 0)) / 2;
        const [from, to] = [strip?.us[0] ?? Infinity, strip?.us.at(-1) ?? -Infinity];
        const out = strip && u >= from && u <= to ? outerFace(strip, u) : flank;
        return acrossStroke(pose, u, shape.spine.value(Math.max(u, 0)), -Math.max(out, flank))[0];
      }),
    );
  });
  return Math.max(...reaches);
};
