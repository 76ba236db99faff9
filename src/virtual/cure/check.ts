import { wantedHeightAt, wantedOn } from '../../blade/bevel.ts';
import { placeOn } from '../../blade/place.ts';
import type { Side } from '../../blade/schema.ts';
import { loweredTo, problem, type Issue } from '../../core/issue.ts';
import { atan2, cos, sin } from '../../core/trigonometry.ts';
import { degrees } from '../../core/units.ts';
import { text } from '../../text/index.ts';
import type { Strip } from '../hold/strip.ts';
import { stripPlace, type Search, type Tried } from './find.ts';
import type { Measures } from './types.ts';

const words = text.virtual.cure.issues;

/** Room kept between the strip and the far bevel, mm. */
const BESIDE = 0.5;

const hollowOf = ({ us, out }: Strip): Measures['hollow'] =>
  us.reduce(
    (sharpest, u, k) => {
      const [a, b] = [us[k - 1], us[k + 1]];
      if (a === undefined || b === undefined) return sharpest;
      const [p = 0, q = 0, r = 0] = [out[k - 1], out[k], out[k + 1]];
      const bend = (2 * ((r - q) / (b - u) - (q - p) / (u - a))) / (b - a);
      const radius = bend > 0 ? 1 / bend : Infinity;
      return radius < sharpest.radius ? { radius, u } : sharpest;
    },
    { radius: Infinity, u: us[0] ?? 0 },
  );

const far = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** Unground flank of the far face beside the strip. */
const flankOf = ({ shape, pass, wish }: Search, { us, bottom }: Strip): Measures['flank'] => {
  const seat = 2 * pass.holding.body.noseHalf;
  const wanted = wantedOn(shape, far(pass.side), seat);
  const rows = us.map((u) => {
    const { height, spine } = placeOn(shape, u, seat);
    const bevel = wanted ? wantedHeightAt(shape.blade.line.follow, wanted, height) : 0;
    return { u, has: height - bevel, needs: bottom - spine[1] + wish.height + BESIDE };
  });
  return rows.reduce((worst, row) => (row.has - row.needs < worst.has - worst.needs ? row : worst));
};

/** Height over the seat of the strip's lower outer corner at one of its nodes. */
const contactAt = (search: Search, { us, out, bottom }: Strip, k: number): number => {
  const { near, bottom: above, tilt } = stripPlace(search, us[k] ?? 0, bottom);
  return above * cos(tilt) + (near + (out[k] ?? 0)) * sin(tilt);
};

export const measuresOf = (search: Search, { pass, result }: Tried, strip: Strip): Measures => {
  const { shape } = search;
  const { step } = pass.holding.body;
  const at = step.kind === 'narrow' ? step.at : 0;
  // Above the step, where the strip is on the blade: the near corner's distance from the face.
  const corners = result.reached.map(({ pose: { m, v0, y } }) => {
    const [v, n] = [shape.spine.value(m + at), shape.thickness.value(m + at) / 2];
    return y[0] + y[1] * at + y[2] * (v - v0) + y[3] * n;
  });
  return {
    corner: Math.min(...corners),
    contact: Math.max(...strip.us.map((_, k) => contactAt(search, strip, k))),
    yaw: Math.max(
      ...result.reached.map(({ pose: { x, y } }) => Math.abs(degrees(atan2(x[3], -y[3])))),
    ),
    hollow: hollowOf(strip),
    flank: flankOf(search, strip),
  };
};

/** Why a strip cannot be used, if it cannot. */
export const stripIssues = (search: Search, tried: Tried, m: Measures): Issue[] => {
  const { pass, wish } = search;
  const { side } = pass;
  const { body } = pass.holding;
  const issues: Issue[] = [];
  const add = (code: string, path: string, why: { message: string; fix: string }): void => {
    issues.push(problem(code, path, why));
  };
  if (m.flank.has < m.flank.needs)
    add('strip-flank', 'strip.height', words.noFlank(side, m.flank.has, m.flank.needs, m.flank.u));
  if (m.contact > body.stepTop)
    add('strip-contact', 'step.top', words.contactTooHigh(m.contact, body.stepTop));
  if (m.hollow.radius < wish.stepRadius)
    add(
      'strip-hollow',
      'strip.stepRadius',
      words.tooHollow(m.hollow.radius, wish.stepRadius, m.hollow.u),
    );
  const need = body.noseFront + wish.bearing;
  if (m.corner < need) {
    const why = words.offNose(m.corner, need);
    issues.push(loweredTo(problem('strip-bearing', 'nose.front', why), m.corner - wish.bearing));
  }
  const { missed } = tried.result;
  if (missed.length > 0) add('strip-stand', 'stroke', words.cannotStand(side, missed.length));
  if (Math.abs(tried.off.value) > wish.allowed)
    add(
      'strip-line',
      'line.allowed',
      words.lineRemains(side, Math.abs(tried.off.value), tried.off.u, wish.allowed),
    );
  return issues;
};
