import {
  capScrew,
  inSeat,
  radians,
  sin,
  washer,
  type Blade,
  type Design,
  type EdgeRestPlan,
} from '../../src/family/index.ts';
import { THREAD } from '../shared/layout/threads.ts';
import { SIZE } from '../shared/layout/sizes.ts';
import { shiftsOf } from '../shared/needs-of.ts';
import type { EdgeContext } from './context.ts';
import { LIP } from './sizes.ts';

/** What a stop collar that hangs low or reaches far back asks of the seat and the nose, mm. */
export interface CollarRoom {
  /** Seat and lip beyond either end of the lip slide, so that the collar stops beside it. */
  readonly overhang: number;
  /** How far back the collar reaches in front of the nose screws; 0 where it passes over them. */
  readonly swing: number;
}

const OVERHANG = 1;

/** Height of a blade at its plunge. */
export const heelOf = ({ outline }: Blade): number =>
  outline.kind === 'dimensions' ? outline.heelHeight : (outline.edge[0]?.[1] ?? 0);

/** The collar of one blade as it stands: how low it comes, and how far back plates and nuts do. */
const reachesOf = (design: Design, plan: EdgeRestPlan, { rig: { l } }: EdgeContext) => {
  const { top, upper, gripped, thickness } = l.collar;
  const side = gripped / 2 + thickness;
  return plan.settings.flatMap(({ blades }) =>
    blades.flatMap(({ blade, places: [first] }) => {
      const found = design.blades.find(({ name }) => name === blade);
      if (first === undefined || found === undefined) return [];
      const { origin, tilt } = first.standing;
      const at = (w: number, v: number) => inSeat(origin, tilt, [w, heelOf(found) - v]);
      const nut = SIZE.collarScrewRoom;
      return {
        low: Math.min(...[-side, side].map((w) => at(w, top)[1])),
        back: at(side, top)[0],
        nutLow: at(side + SIZE.collarHead, upper)[1] - nut,
        nutBack: at(side + SIZE.collarHead, upper)[0],
      };
    }),
  );
};

/**
 * The room that the collar of a drawn rest lacks, where the tang comes near to the edge or is thick:
 * beside the lip slide, or in front of the nose screws. Undefined where it lacks none.
 */
export const collarRoom = (
  design: Design,
  plan: EdgeRestPlan,
  c: EdgeContext,
): CollarRoom | undefined => {
  const { rig, x, v, stands } = c;
  // A blade whose tip is lifted turns about the end of the seat and lowers its tang.
  const room = LIP.collarRoom + sin(radians(v.tipLift)) * rig.l.collar.width;
  const washers = rig.joints.find(({ name }) => name === 'nose-screw')?.washers.count ?? 0;
  const { headHeight, headDiameter } = capScrew(THREAD.main);
  const heads = headHeight + washers * washer(THREAD.main, 'large').thickness - x.rise;
  const reaches = reachesOf(design, plan, c);
  const low = Math.min(...reaches.map((one) => one.low)) - room;
  const back = Math.max(
    ...reaches.map((one) =>
      one.nutLow - room < heads ? Math.max(one.back, one.nutBack) : one.back,
    ),
  );
  const front = rig.l.nose.screwY - headDiameter / 2 + Math.min(...shiftsOf(stands).shifts);
  const overhang = low < -x.under ? OVERHANG : 0;
  const swing = low < heads && back > front - LIP.collarRoom ? back : 0;
  return overhang > 0 || swing > 0 ? { overhang, swing } : undefined;
};
