import {
  compose,
  onGrid,
  type Blade,
  type BladePose,
  type CarriagePlan,
} from '../../src/family/index.ts';
import type { Context } from './context.ts';
import { bladeInCarriage, carriageFrame, plungeX } from './place/stand.ts';

/** Poses over a stroke, both ends included. */
const COUNT = 5;

/** The blade over its stroke at one setting, from stop pin to stop pin. */
export const posesOf = (
  c: Context,
  setting: CarriagePlan['settings'][number],
  blade: Blade,
): BladePose[] => {
  if (!setting.clamping.some((one) => one.blade === blade.name)) return [];
  const inside = bladeInCarriage(c, setting, blade);
  const from = plungeX(c, setting);
  return Array.from({ length: COUNT }, (_, i): BladePose => {
    const x = from * (1 - (2 * i) / (COUNT - 1));
    const frame = compose(carriageFrame(setting.tilt, setting.footCentre, x), inside);
    // The place of the spine line at the belt's middle.
    const u = -frame.origin[0] / frame.x[0];
    return { setting: setting.id, blade: blade.name, u, frame: onGrid(frame) };
  });
};
