import {
  cos,
  dot3,
  halfSpace,
  type Mesh,
  place,
  type Place,
  radians,
  sin,
  sliceByPlane,
  type Vec2,
  type Vec3,
} from '../../../src/family/index.ts';

/** The section square to the spine at a place, as polygon in (v from the spine, w), mm. */
export const sectionAt = (mesh: Mesh, at: Place): Vec2[] => {
  const slope = radians(at.slope);
  const along: Vec3 = [cos(slope), sin(slope), 0];
  const down: Vec3 = [-sin(slope), cos(slope), 0];
  const foot: Vec3 = [at.spine[0], at.spine[1], 0];
  const { loops, frame } = sliceByPlane(mesh, halfSpace(foot, along));
  const longest = [...loops].sort((a, b) => b.length - a.length)[0] ?? [];
  return longest.map(([x, y]): Vec2 => {
    const p = place(frame, [x, y, 0]);
    const from: Vec3 = [p[0] - foot[0], p[1] - foot[1], p[2]];
    return [dot3(from, down), p[2]];
  });
};
