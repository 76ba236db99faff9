import { problem } from '../../core/issue.ts';
import { all, chain, fail, ok, type Result } from '../../core/result.ts';
import { place, WORLD } from '../../geometry/frame.ts';
import {
  add3,
  cross3,
  dot3,
  length3,
  scale3,
  sub3,
  unit3,
  type Vec3,
} from '../../geometry/vector.ts';
import { text } from '../../text/index.ts';
import { beltPieces } from './belt.ts';
import { surveyed } from './mesh.ts';
import { prismForm } from './prism-form.ts';
import { packPieces, pieceBounds, type Pieces, type Round } from './pieces.ts';
import type { Box, Cylinder, Shape } from './shape.ts';
import type { Solid, TreeSolid } from './solid.ts';
import { buildTree } from './tree.ts';

const words = text.check.distance;

const finite = (values: Iterable<number>): boolean => {
  for (const value of values) if (!Number.isFinite(value)) return false;
  return true;
};

const ofBodies = (pieces: Pieces, anchors: Float64Array, proud: number): TreeSolid => ({
  kind: 'tree',
  of: 'bodies',
  pieces,
  tree: buildTree(pieceBounds(pieces)),
  anchors,
  proud,
});

const boxCorners = ({ frame, size }: Box): Vec3[] =>
  [-0.5, 0.5].flatMap((x) =>
    [-0.5, 0.5].flatMap((y) =>
      [-0.5, 0.5].map((z) => place(frame, [x * size[0], y * size[1], z * size[2]])),
    ),
  );

const bar = ({ from, to, radius }: Cylinder): Round => {
  const along = sub3(to, from);
  const axis = unit3(along);
  const least = axis.map(Math.abs).indexOf(Math.min(...axis.map(Math.abs)));
  const middle = unit3(
    cross3(axis, [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0]),
  );
  return {
    centre: scale3(add3(from, to), 0.5),
    middle,
    side: cross3(axis, middle),
    axis,
    outer: radius,
    inner: 0,
    halfAngle: Math.PI,
    halfWidth: length3(along) / 2,
  };
};

/**
 * Makes a shape ready for distance queries, in the coordinates of the body it belongs to.
 *
 * Fails on numbers that are not finite, sizes that are not positive and meshes that are not
 * closed: a solid whose inside cannot be told would let a hit pass as a distance.
 */
export const prepare = (name: string, shape: Shape): Result<Solid> => {
  const convex = (hulls: readonly (readonly Vec3[])[], rounds: readonly Round[], proud = 0) => {
    const pieces = packPieces(hulls, rounds);
    if (!finite(pieces.points) || !finite(pieces.rounds)) {
      return fail(problem('shape-not-finite', name, words.notFinite(name)));
    }
    const anchor = hulls[0]?.[0] ?? rounds[0]?.centre;
    if (!anchor) return fail(problem('shape-empty', name, words.shapeEmpty(name)));
    return ok<Solid>(ofBodies(pieces, Float64Array.from(anchor), proud));
  };
  const positive = (...sizes: readonly number[]) => sizes.every((size) => size > 0);
  const flat = () => fail(problem('shape-without-size', name, words.noSize(name)));
  switch (shape.kind) {
    case 'half-space': {
      const length = length3(shape.normal);
      if (!finite([...shape.point, length])) {
        return fail(problem('shape-not-finite', name, words.notFinite(name)));
      }
      if (!positive(length)) return flat();
      const normal = scale3(shape.normal, 1 / length);
      return ok({ kind: 'plane', normal, offset: dot3(normal, shape.point) });
    }
    case 'box':
      return positive(...shape.size) ? convex([boxCorners(shape)], []) : flat();
    case 'cylinder':
      return positive(shape.radius, length3(sub3(shape.to, shape.from)))
        ? convex([], [bar(shape)])
        : flat();
    case 'hulls':
      return convex(shape.hulls, [], shape.proud);
    case 'prisms':
      return ok(prismForm(shape.prisms).at(shape.frame ?? WORLD));
    case 'belt': {
      if (!positive(shape.thickness, shape.width)) return flat();
      const { hulls, rounds, fill } = beltPieces(shape);
      return convex(hulls, rounds, fill);
    }
    case 'mesh':
      return chain(surveyed(name, shape.mesh), (form) => ok(form.at(shape.frame ?? WORLD)));
  }
};

/** Prepares several shapes of one body. */
export const prepareAll = (name: string, shapes: readonly Shape[]): Result<Solid[]> =>
  all(shapes.map((shape) => prepare(name, shape)));
