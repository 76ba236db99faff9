import { radians, sin } from '../../../src/family/index.ts';
import type { Values } from '../parameters.ts';
import { halfDown, halfNearest, halfUp } from '../../shared/layout/half.ts';
import type { Grip } from './grip.ts';
import { ANGLES, BASE, FENCE, FOOT, GUSSET, HEEL, JAW, SOLE } from './sizes.ts';

/** Heights over the base, carriage level, mm; known before anything is solved. */
export const levelsOf = (v: Values, grips: readonly Grip[]) => {
  const soleBottom = 2 * FOOT.radius + v.plate;
  const soleTop = soleBottom + v.plate;
  /** The jaw serves every blade at one height: under the lowest of them. */
  const grip = halfDown(Math.min(...grips.map(({ edge, from }) => v.edgeHeight - edge + from)));
  return {
    soleBottom,
    soleTop,
    jawScrew: grip - JAW.screw,
    jawJack: grip - JAW.jack,
    jawBottom: grip - JAW.end,
    jawTop: grip + JAW.grip,
  };
};

export type Levels = ReturnType<typeof levelsOf>;

/** Air between the top of an angle and the level of the edge, mm. */
export const BELOW_EDGE = 3;

/** The tallest angle that backs the jaw and stays below the edge. */
export const angleFor = (v: Values, { soleTop, jawTop }: Levels) =>
  ANGLES.findLast(
    ({ leg }) =>
      soleTop + leg <= v.edgeHeight - BELOW_EDGE &&
      soleTop + leg >= jawTop - JAW.grip + JAW.leastGrip,
  );

/** What blades, grinder and plan ask of the layout. */
export interface Needs {
  readonly beltHalf: number;
  /** Longest blade, and the highest bevel below the edge. */
  readonly bladeLength: number;
  readonly bevelMost: number;
  readonly gripped: number;
  /** Foot's centre from the belt over all settings, with `forward` as planned. */
  readonly footCentre: { readonly min: number; readonly max: number };
  readonly tiltMost: number;
  readonly extensionMost: number;
  /** Heights of the clamp screw over the levels' own for turned blades: 0 for none. */
  readonly jawDrops: readonly number[];
}

/** Least distance of the foot's centre from the belt: base gap, fence and foot in a row. */
export const leastFootCentre = (v: Values, needs: Pick<Needs, 'footCentre'>): number =>
  v.beltGap + 0.5 + fenceOf(v, needs).depth + FOOT.radius;

/** The middle of its way lies whole half millimetres behind the front of the base, as others do. */
const fenceOf = (v: Values, { footCentre: { min, max } }: Pick<Needs, 'footCentre'>) => {
  const middle = v.beltGap + halfNearest((min + max) / 2 - v.beltGap);
  const travel = Math.max(max - middle, middle - min) + v.travelReserve;
  const slot = 6.6;
  return { middle, travel, depth: halfUp(slot + 2 * travel + 2 * FENCE.edge) };
};

/** Least distance of upright and foot for the parts that stand between them. */
export const leastForward = (v: Values, angle: ReturnType<typeof angleFor>): number =>
  v.upright === 'angle' && angle ? angle.wall + angle.root + 5.5 : v.plate + FOOT.headRoom;

/** Where the foot screws stand: between what holds the upright, or outside it where that is near. */
const footScrewX = (stroke: number, outer: number): number => {
  const [least, most] = [GUSSET.inner + FOOT.besideTab, outer - FOOT.besideTab];
  return least > most ? outer + FOOT.besideTab : Math.min(most, Math.max(least, stroke - 6));
};

/**
 * Where the gussets stand: an outer and an inner pair, or the inner one alone on a carriage so
 * short that the slots of the two would leave no web between them.
 */
const gussetsOf = (v: Values, outer: number): number[] => {
  const web = outer - GUSSET.inner - v.plate - v.tabPlay;
  const inner = [-GUSSET.inner, GUSSET.inner];
  return web < GUSSET.web * v.plate ? inner : [-outer, ...inner, outer];
};

/**
 * Every derived dimension, mm: the carriage level with its foot's centre at y = 0 and its middle at
 * x = 0 (y away from the belt, z over the base), base and fence in the seat frame with the fence
 * at the middle of its travel. Parts, placements and checks read these numbers and derive no others.
 */
export const layoutOf = (
  v: Values,
  levels: Levels,
  angle: ReturnType<typeof angleFor>,
  forward: number,
  needs: Needs,
) => {
  const stroke = Math.max(5, (needs.bladeLength - v.tipOverlap - v.plungeMargin) / 2);
  const jawX = v.jawGap + v.jawWidth / 2 + needs.beltHalf + v.plungeMargin + stroke;
  const half = jawX + v.jawWidth / 2 + 6;
  const plates = v.upright !== 'angle';
  const gussets = gussetsOf(v, jawX - GUSSET.outerFromJaw);
  const outer = plates ? Math.max(...gussets) : half - 14;
  const screwX = footScrewX(stroke, outer);
  const footHalf = Math.max(stroke + 6, screwX + FOOT.screwEnd);
  const wall = plates || !angle ? v.plate : angle.wall;
  const front = -forward;
  const bandBack = plates ? front + v.plate + SOLE.band : front + (angle?.leg ?? 0) + 2;
  const leastTop = levels.soleTop + GUSSET.tabFrom + GUSSET.tab + 12;
  const middleTop = plates
    ? Math.max(leastTop, Math.min(levels.jawTop, v.edgeHeight - needs.bevelMost - 1.5))
    : levels.soleTop + (angle?.leg ?? 0);
  const screw = v.plate > 7 ? 25 : 20;
  const palmWeb = screw - 5 - v.plate;
  const { middle, ...fence } = fenceOf(v, needs);
  const s = sin(radians(needs.tiltMost));
  const heelBack = needs.footCentre.max + v.length + needs.extensionMost * s;
  const knobAir = nutless(levels, needs);
  return {
    ...levels,
    stroke,
    jawX,
    half,
    plates,
    forward,
    front,
    wall,
    angle,
    bandBack: Math.max(bandBack, FOOT.stripHalf + 4),
    middleTop,
    earTop: plates ? Math.max(levels.jawTop, middleTop) : middleTop,
    gripped: needs.gripped,
    jawDrops: needs.jawDrops,
    gusset: {
      xs: gussets,
      from: front + v.plate,
      length: SOLE.band - 2,
      height: middleTop - levels.soleTop - 3,
    },
    foot: { half: footHalf, screwX, stripHalf: footHalf - 4 },
    tailBack: v.length + SOLE.palmFrom + SOLE.palmLength - 12,
    palm: {
      screw,
      front: v.length + SOLE.palmFrom,
      back: v.length + SOLE.palmFrom + SOLE.palmLength,
      pocket: 5,
      height: palmWeb + 5,
      bottom: levels.soleBottom - palmWeb - 5,
      screwX: 14,
      screwY: v.length + SOLE.palmFrom + 9,
    },
    heel: knobAir,
    fence: {
      ...fence,
      half: stroke + FENCE.overStroke,
      rear: middle - FOOT.radius,
      screwX: stroke + FENCE.overStroke - FENCE.end,
    },
    base: {
      half: stroke + footHalf + BASE.pin + BASE.pinEdge,
      front: v.beltGap,
      back: v.beltGap + halfUp(heelBack + BASE.behindHeel - v.beltGap),
      pinX: stroke + footHalf + BASE.pin / 2,
      pinY: middle,
      heelTrack: { from: needs.footCentre.min + v.length, to: heelBack },
    },
  };
};

/** Heights along the heel screw from its tip: thin nut under the knob, knob, whole length. */
const nutless = ({ soleTop }: Levels, needs: Needs) => {
  const lock = 3.2;
  const under = soleTop + lock + needs.extensionMost + HEEL.spare + HEEL.air;
  const knob = under + lock;
  return { under, knob, length: Math.ceil(knob + HEEL.knobWeb + 5.2) };
};

export type Layout = ReturnType<typeof layoutOf>;
