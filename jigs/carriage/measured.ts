import {
  all,
  type Blade,
  bladeMesh,
  type Certainty,
  chain,
  compose,
  cos,
  cutByPlane,
  dot3,
  fail,
  type Frame,
  halfSpace,
  localise,
  type Measured,
  type Mesh,
  ok,
  type Part,
  placeAt,
  problem,
  radians,
  type Result,
  shift,
  type Side,
  sin,
  text,
  type Vec3,
} from '../../src/family/index.ts';
import { expectedOf } from '../shared/grinding.ts';
import { sectionAt } from '../shared/measured/section-at.ts';
import { gauge } from '../shared/measured/measure.ts';
import type { Context } from './context.ts';
import type { Item } from './place/item.ts';
import { bladeInCarriage, type PlanSetting } from './place/stand.ts';
import { settleParts } from './settle.ts';

/** Chord error of the blade that is ground, mm: far below what is measured. */
const CHORD = 1e-4;
/** Half length of the piece of blade that is cut: a section may lean by its height along it, mm. */
const PIECE = 60;

const words = text.family.carriage.issues;

/** Rear face of the finished fence at a setting: its own depth behind where the plan puts its front. */
const fenceRear = (
  c: Context,
  parts: readonly Part[],
  setting: PlanSetting,
): number | undefined => {
  const outer = parts.find(({ id }) => id === 'fence')?.layers[0]?.profile.outer;
  if (outer?.kind !== 'path') return undefined;
  const depth = Math.max(...outer.vertices.map(({ y }) => y));
  return setting.fence - c.l.fence.depth + depth;
};

/** How far the finished edge gauge's lip stands above the upright. */
const lipOf = (parts: readonly Part[]): number | undefined => {
  const outer = parts.find(({ id }) => id === 'edge-gauge')?.layers[0]?.profile.outer;
  if (outer?.kind !== 'path') return undefined;
  const front = Math.min(...outer.vertices.map(({ x }) => x));
  return Math.min(...outer.vertices.filter(({ x }) => x - front < 1e-9).map(({ y }) => y));
};

/** The blade in the seat frame as the finished parts hold it. */
export const finishedPose = (
  c: Context,
  parts: readonly Part[],
  items: readonly Item[],
  setting: PlanSetting,
  blade: Blade,
): Frame | undefined => {
  const rear = fenceRear(c, parts, setting);
  const lip = lipOf(parts);
  if (rear === undefined || lip === undefined) return undefined;
  const settled = settleParts(c, parts, items, setting, rear);
  if (!settled) return undefined;
  const off: Vec3 = [0, settled.front - c.l.front, settled.top + lip - c.v.edgeHeight];
  return compose(settled.frame, shift(bladeInCarriage(c, setting, blade), off));
};

/** The blade after one setting: everything on the belt's side of the abrasive face is gone. */
const groundBy = (mesh: Mesh, pose: Frame, lean: number): Mesh => {
  const t = radians(lean);
  const normal: Vec3 = [0, -cos(t), -sin(t)];
  const turned: Vec3 = [dot3(normal, pose.x), dot3(normal, pose.y), dot3(normal, pose.z)];
  return cutByPlane(mesh, halfSpace(localise(pose, [0, 0, 0]), turned));
};

const piece = (mesh: Mesh, u: number): Mesh =>
  cutByPlane(
    cutByPlane(mesh, halfSpace([u + PIECE, 0, 0], [1, 0, 0])),
    halfSpace([u - PIECE, 0, 0], [-1, 0, 0]),
  );

const certaintyAt = ({ plan }: Context, blade: string, side: Side, u: number): Certainty => {
  const line = plan.lines.find((one) => one.blade === blade && one.side === side);
  const place = [...(line?.places ?? [])].sort((a, b) => Math.abs(a.u - u) - Math.abs(b.u - u))[0];
  return place?.certainty ?? { kind: 'estimate', basis: words.noLine };
};

/**
 * What the finished blades show at heel, middle and tip: each blank clamped on the finished upright,
 * the carriage settled on foot, heel screw and fence as the parts are, cut by the abrasive face
 * at every setting in turn, sliced and measured.
 */
export const measuredOf = (
  c: Context,
  parts: readonly Part[],
  items: readonly Item[],
): Result<Measured[]> => {
  const { plan } = c;
  const level = plan.settings.filter(({ facet }) => facet === 0);
  const results = c.design.blades.flatMap((blade) => {
    const { blade: blank } = bladeMesh(blade, { chord: CHORD });
    const expected = expectedOf(level, blade.name);
    return expected.map(({ u }): Result<Measured[]> => {
      let mesh = piece(blank, u);
      for (const setting of plan.settings) {
        if (!setting.clamping.some((one) => one.blade === blade.name)) continue;
        const pose = finishedPose(c, parts, items, setting, blade);
        if (!pose) return fail(problem('not-settled', 'blades', words.notSettled(blade.name, u)));
        mesh = groundBy(mesh, pose, plan.lean);
      }
      const section = sectionAt(mesh, placeAt(blade, u));
      const sides = plan.lines.filter((one) => one.blade === blade.name).map(({ side }) => side);
      return all(
        sides.map((side): Result<Measured> => {
          const found = gauge(section, side);
          if (!found)
            return fail(problem('not-settled', 'blades', words.notSettled(blade.name, u)));
          return ok({
            blade: blade.name,
            side,
            u,
            ...found,
            certainty: certaintyAt(c, blade.name, side, u),
          });
        }),
      );
    });
  });
  return chain(all(results), (lists) => ok(lists.flat()));
};
