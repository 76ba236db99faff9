import {
  all,
  bladeMesh,
  chain,
  cos,
  dot3,
  type HalfSpace,
  type Measured,
  type Mesh,
  ok,
  place,
  type Place,
  placeAt,
  posesWithStrip,
  radians,
  type Result,
  SIDES,
  sin,
  type Vec2,
} from '../../../src/family/index.ts';
import { gaugeWhole } from '../../shared/measured/measure.ts';
import { sectionAt } from '../../shared/measured/section-at.ts';
import type { Question } from '../checks/question.ts';
import { between, faceInBlade, SLICE } from '../measured/cut-pass.ts';
import { certaintyAt, CHORD, notSettled } from '../measured/index.ts';
import type { Carried } from './carried.ts';

/** What of a section (v, w) lies behind an abrasive face of the blade's coordinates. */
const behind = (section: readonly Vec2[], at: Place, { normal, offset }: HalfSpace): Vec2[] => {
  const slope = radians(at.slope);
  const over = ([v, w]: Vec2): number =>
    dot3(normal, [at.spine[0] - v * sin(slope), at.spine[1] + v * cos(slope), w]) - offset;
  return section.flatMap((p, i): Vec2[] => {
    const q = section[(i + 1) % section.length] ?? p;
    const [a, b] = [over(p), over(q)];
    const kept = a <= 0 ? [p] : [];
    if (a <= 0 === b <= 0) return kept;
    const k = a / (a - b);
    return [...kept, [p[0] + k * (q[0] - p[0]), p[1] + k * (q[1] - p[1])]];
  });
};

/** The section at a place after every pose of every belt that had the place under the belt. */
const measuredAt = (
  q: Question,
  { blade, found }: Carried,
  blank: Mesh,
  u: number,
): Result<Measured[]> => {
  const at = placeAt(blade, u, 2 * q.context.l.nose.half);
  const half = q.design.grinder.belt.width / 2;
  const reach = SLICE + Math.abs(at.height * sin(radians(at.slope)));
  const section = q.plan.settings
    .flatMap(({ id }) => posesWithStrip(found.cure, id))
    .filter(({ frame }) => Math.abs(place(frame, [at.edge[0], at.edge[1], 0])[0]) <= half)
    .reduce<readonly Vec2[]>(
      (left, { frame }) => behind(left, at, faceInBlade(frame, q.plan.lean)),
      sectionAt(between(blank, at, reach), at),
    );
  const sides = SIDES.filter((side) => q.plan.settings.some((setting) => setting.side === side));
  return all(
    sides.map((side): Result<Measured> => {
      const gauged = gaugeWhole(section, side);
      if (!gauged) return notSettled(blade.name, u);
      const certainty = certaintyAt(q.plan, blade.name, side, u);
      return ok({ blade: blade.name, side, u, ...gauged, certainty });
    }),
  );
};

/**
 * What a blade ground with its strip shows at heel, middle and tip: the section of its mesh is cut by
 * the abrasive face in every pose of every belt, and measured. That the poses stand on nose and step is
 * what the contact checks prove.
 */
export const measuredWithStrip = (q: Question, strip: Carried): Result<Measured[]> => {
  const { blade: blank } = bladeMesh(strip.blade, { chord: CHORD });
  const last = q.plan.settings.at(-1);
  const expected = last?.blades[0]?.expected ?? [];
  return chain(all(expected.map(({ u }) => measuredAt(q, strip, blank, u))), (lists) =>
    ok(lists.flat()),
  );
};
