import {
  bevelPlace,
  placeAt,
  stepAtPin,
  text,
  type Design,
  type SpineRestPlan,
} from '../../src/family/index.ts';
import { buildOf } from '../shared/build-of.ts';
import { WIDEST_TOLD } from '../shared/checks/ranges.ts';
import { DIVISIONS, PITCH } from '../shared/feed.ts';
import { SIZE } from '../shared/layout/sizes.ts';
import type { Context } from '../shared/parts/context.ts';
import { padReaches } from './pads.ts';
import { feelerGap } from './rules.ts';
import { packingAt, seatOf, type Carried } from './strip/carried.ts';

type StepsOf = Parameters<typeof text.family.spineRest.assembly>[0];

/** The numbers in the sentences of building and setting. */
export const stepsOf = (
  design: Design,
  c: Context,
  plan: SpineRestPlan,
  strip?: Carried,
): StepsOf => {
  const { v, l } = c;
  const thinnest = Math.min(...design.blades.flatMap((b) => b.thickness.map(({ t }) => t)));
  const [blade] = design.blades;
  const place = blade && placeAt(blade, bevelPlace(blade));
  return {
    ...buildOf(c),
    noseGap: feelerGap(design, v),
    noseGapMost: Math.min(WIDEST_TOLD, thinnest),
    pin: SIZE.zeroPin,
    pinLength: SIZE.zeroPinLength,
    pinZero: stepAtPin(SIZE.zeroPin / 2, c.lean),
    collar: l.collar.distance,
    yaw: l.slide.yaw,
    lean: c.lean,
    perDivision: PITCH / DIVISIONS,
    degreesPerTenth: plan.sensitivity[0]?.degrees ?? NaN,
    heightPerTenth: plan.sensitivity[0]?.bevelHeight ?? NaN,
    gauge: l.gauge.width,
    bar: {
      thickness: place?.thickness ?? NaN,
      height: place?.height ?? NaN,
      ...(place && strip ? { packing: packingAt(strip, place.u) } : {}),
    },
    padHeight: v.plate + l.push.pad,
    ...(strip ? { lineStrip: seatOf(strip) } : {}),
    pads: design.blades.map(({ name }) => ({
      blade: name,
      reaches: padReaches(
        plan,
        name,
        l.push.pads.map((height) => height + v.plate),
        v.padMargin,
      ),
    })),
  };
};
