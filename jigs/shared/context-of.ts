import {
  capScrew,
  chain,
  dowelPin,
  fail,
  leastEdge,
  nut,
  ok,
  problem,
  text,
  type Design,
  type Result,
} from '../../src/family/index.ts';
import { chooseMount } from './layout/choose-mount.ts';
import { jointsOf } from './layout/joints.ts';
import { layoutOf, type Layout } from './layout/layout.ts';
import { FEED, SIZE } from './layout/sizes.ts';
import { stationsOf } from './layout/stations.ts';
import { THREAD } from './layout/threads.ts';
import type { Needs } from './needs.ts';
import type { Values } from './parameters.ts';
import type { Context } from './parts/context.ts';
import { placedRest } from './site.ts';

const words = text.family.shared.issues;

/** The feed screw, sawn from threaded rod: its length, its front end and the knob's front. */
const feedOf = (l: Layout): Context['feed'] => {
  const length = Math.ceil(l.feed.screwNeeded);
  const frontY = l.slide.back - FEED.wall - FEED.nutPair - FEED.screwEnd;
  const knobNut = nut(THREAD.main, 'full').height;
  return { length, frontY, knobY: frontY + length - knobNut - FEED.knobWeb };
};

/** The longest guide pin between the underside of the base and the top of the step. */
const pinLengthOf = (v: Values): number => {
  const room = 2 * v.plate + v.base - SIZE.pinBelow;
  return (
    dowelPin(SIZE.guidePin)
      .lengths.filter((length) => length <= room)
      .at(-1) ?? room
  );
};

/** The shortest screw through two collar plates, what they grip, and a nut. */
const collarScrewOf = (l: Layout): Result<number> => {
  const need = 2 * l.collar.thickness + l.collar.gripped + nut(THREAD.collar, 'full').height;
  const length = capScrew(THREAD.collar).lengths.find((have) => have >= need);
  return length === undefined
    ? fail(
        problem(
          'no-screw',
          'blades',
          words.noScrew(THREAD.collar, { from: need, to: need + 5 }, 'the collar'),
        ),
      )
    : ok(length);
};

/** What the mechanics of a rest with a feed are drawn from. */
export interface Rig {
  readonly design: Design;
  readonly v: Values;
  readonly needs: Needs;
  /** From the grinder to the frame of the layout along y, base at its mean place, mm. */
  readonly offset: number;
  readonly lean: number;
  readonly stepContact: number;
  /** What this fixture has otherwise than the spine rest. */
  readonly adapt?: (layout: Layout) => Layout;
}

/** Everything that parts and placements of a rest with a feed are drawn from. */
export const contextFrom = (rig: Rig): Result<Context> => {
  const { design, v, needs } = rig;
  const whole = layoutOf(v, needs, leastEdge(design.making.plates.process, v.plate));
  const l = rig.adapt?.(whole) ?? whole;
  const s = stationsOf(v, l);
  const rest = placedRest(design.grinder, rig.offset);
  return chain(chooseMount(v, l, s, rest), (mount) => {
    const drawn = {
      v,
      l,
      s,
      mount,
      making: design.making,
      lean: rig.lean,
      stepContact: rig.stepContact,
      restThickness: rest.thickness,
      needsOnBase: needs.onBase,
    };
    return chain(jointsOf(drawn), (joints) =>
      chain(collarScrewOf(l), (collarScrew) =>
        ok({ ...drawn, joints, feed: feedOf(l), collarScrew, pinLength: pinLengthOf(v) }),
      ),
    );
  });
};
