import { place, type BladePose, type Vec3 } from '../../../src/family/index.ts';

/** Most by which a blade that is led straight from pose to pose may leave where it settles, mm. */
const BEND = 0.005;
/** How often a stretch of the stroke is halved: where a corner leaves what it touched is a bend. */
const HALVINGS = 8;

type PoseAt = (u: number) => BladePose | undefined;

/** How far in y and z a pose leaves the middle between two others, at the places given. */
const offMiddle = (a: BladePose, pose: BladePose, b: BladePose, places: readonly Vec3[]): number =>
  Math.max(
    ...places.flatMap((at) => {
      const [from, here, to] = [a, pose, b].map(({ frame }) => place(frame, at));
      return [1, 2].map((k) =>
        Math.abs((here?.[k] ?? 0) - ((from?.[k] ?? 0) + (to?.[k] ?? 0)) / 2),
      );
    }),
  );

/** The poses between two that are needed for a blade led straight between them to stay settled. */
const between = (
  a: BladePose,
  b: BladePose,
  poseAt: PoseAt,
  placesAt: (u: number) => readonly Vec3[],
  left: number,
): BladePose[] => {
  const middle = left > 0 ? poseAt((a.u + b.u) / 2) : undefined;
  if (!middle || offMiddle(a, middle, b, placesAt(middle.u)) <= BEND) return [];
  return [
    ...between(a, middle, poseAt, placesAt, left - 1),
    middle,
    ...between(middle, b, poseAt, placesAt, left - 1),
  ];
};

/**
 * The poses at the places `us` along the stroke, evenly spaced, and more of them where the stroke
 * bends: a check leads the blade straight from one pose to the next. A bend shows in the poses on
 * both its sides, so only stretches beside one that leaves the middle of its neighbours are looked
 * into. `placesAt`: where a blade can touch while u is at the belt, in its own coordinates. None where
 * the blade does not come to rest at a place between two at which it does.
 */
export const refined = (
  us: readonly number[],
  poseAt: PoseAt,
  placesAt: (u: number) => readonly Vec3[],
): BladePose[] => {
  let lost = false;
  const middleAt: PoseAt = (u) => {
    const pose = poseAt(u);
    lost ||= pose === undefined;
    return pose;
  };
  const poses = us.flatMap((u) => poseAt(u) ?? []);
  const bent = poses.map((pose, i) => {
    const [a, b] = [poses[i - 1], poses[i + 1]];
    return a && b ? offMiddle(a, pose, b, placesAt(pose.u)) > BEND : false;
  });
  const found = poses.flatMap((pose, i) => {
    const next = poses[i + 1];
    return next && (bent[i] || bent[i + 1])
      ? [pose, ...between(pose, next, middleAt, placesAt, HALVINGS)]
      : [pose];
  });
  return lost ? [] : found;
};
