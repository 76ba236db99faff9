import {
  all,
  atan,
  type Blade,
  type Certainty,
  chain,
  degrees,
  type EdgeRestPlan,
  fail,
  type Measured,
  type Mesh,
  ok,
  type Place,
  problem,
  type Result,
  shapeOf,
  type Side,
  SIDES,
  text,
} from '../../../src/family/index.ts';
import { expectedOf } from '../../shared/grinding.ts';
import type { AlongEdge } from '../blade.ts';
import type { Question } from '../checks/question.ts';
import { contactsAt } from '../pose/poses.ts';
import { edgeTouchable } from '../pose/settle.ts';
import { edgeSection, groundMesh, hollowOf, near, type WheelPass } from './grind.ts';
import { gaugeHollow, type Gauged } from './measure.ts';

const words = text.family.edgeRest.issues;

/** What was measured of one hollow, with the contract's names and its own. */
export type MeasuredHollow = Measured & Pick<Gauged, 'depth' | 'lower' | 'upper' | 'web'>;

/** The section square to the edge at a place. */
const placeAtEdge = (blade: Blade, u: number): Place => {
  const shape = shapeOf(blade);
  const [v, slope] = [shape.edge.value(u), shape.edge.slope(u)];
  return {
    u,
    spine: [u, v],
    edge: [u, v],
    slope: degrees(atan(slope)),
    height: 0,
    thickness: shape.thickness.value(u),
  };
};

const certaintyAt = (plan: EdgeRestPlan, blade: string, side: Side, u: number): Certainty => {
  const line = plan.lines.find((l) => l.blade === blade && l.side === side);
  const places = [...(line?.places ?? [])].sort((a, b) => Math.abs(a.u - u) - Math.abs(b.u - u));
  return places[0]?.certainty ?? { kind: 'estimate', basis: words.noLine };
};

/** The passes of a blade, from the lip as it is placed and the wheel under each belt. */
const passesOf = (q: Question, blade: string): WheelPass[] =>
  q.plan.settings.flatMap((setting): WheelPass[] => {
    const place = setting.blades.find((b) => b.blade === blade)?.places[0];
    const wear = q.place(setting.id).find(({ name }) => name === 'wear-strip');
    const stand = q.context.stands[setting.step - 1];
    if (!place || !wear || !stand) return [];
    const { radius, drop } = stand.wheel;
    const contacts = contactsAt(q.context, wear.frame.origin[1]);
    return [{ side: setting.side, contacts, radius, drop, depth: place.depth }];
  });

/**
 * Grinds and measures one place. Every hollow ends above the lip's top, which a check of its own
 * proves, so seat and lip meet the blade as it comes in every pass.
 */
const measuredAt = (
  q: Question,
  blade: Blade,
  asItComes: Mesh,
  u: number,
): Result<MeasuredHollow[]> => {
  const at = placeAtEdge(blade, u);
  const missing = fail(problem('not-settled', 'blades', words.notSettled(blade.name, u)));
  const outline = edgeSection(asItComes, at);
  const edge = near(edgeTouchable(asItComes, q.context.v.lipHeight), at, q.context.x.half);
  const hollows: Partial<Record<Side, AlongEdge[]>> = {};
  const passes = passesOf(q, blade.name);
  for (const pass of passes) {
    const hollow = hollowOf(edge, outline, pass, at);
    if (!hollow) return missing;
    (hollows[pass.side] ??= []).push(hollow);
  }
  const section = edgeSection(groundMesh(blade, hollows), at);
  const sides = SIDES.filter((side) => passes.some((p) => p.side === side));
  return all(
    sides.map((side): Result<MeasuredHollow> => {
      const found = gaugeHollow(section, outline, side);
      if (!found) return missing;
      const { angle, upper, depth, lower, web } = found;
      const certainty = certaintyAt(q.plan, blade.name, side, u);
      return ok({
        blade: blade.name,
        side,
        u,
        angle,
        bevelHeight: upper,
        edgeThickness: found.edge,
        certainty,
        depth,
        lower,
        upper,
        web,
      });
    }),
  );
};

/**
 * What the finished blades show at heel, middle and tip: each blade, bevels ground as it comes, is
 * settled on seat and lip as they stand, tipped until the wheel is as deep as the stop of every
 * pass, hollowed, sliced and measured. The bevel height is the upper limit of the hollow.
 */
export const measuredOf = (q: Question): Result<MeasuredHollow[]> => {
  const results = q.design.blades.map((blade) => {
    const expected = expectedOf(q.plan.settings, blade.name);
    const asItComes = groundMesh(blade, {});
    return chain(all(expected.map(({ u }) => measuredAt(q, blade, asItComes, u))), (lists) =>
      ok(lists.flat()),
    );
  });
  return chain(all(results), (lists) => ok(lists.flat()));
};
