import {
  atan2,
  bevelPlace,
  cos,
  degrees,
  type Design,
  edgeOffsets,
  exact,
  fail,
  flatten,
  localise,
  type Measured,
  ok,
  type Part,
  place,
  type Placement,
  problem,
  radians,
  type Result,
  text,
  type Vec2,
} from '../../src/family/index.ts';
import type { Aim } from './aim.ts';
import { platenFrame, type Layout } from './layout.ts';
import { bevelAt } from './numbers.ts';
import type { Values } from './parameters.ts';

const words = text.family.backingCarrier;

/** Chord error of the finished outlines, mm. */
const CHORD = 0.0002;

/** Front of the finished, placed parts at a height along the platen, mm from its bare face. */
export const frontAt = (
  design: Design,
  parts: readonly Part[],
  placements: readonly Placement[],
  z: number,
): number => {
  const platen = platenFrame(design.grinder);
  const fronts = placements
    .filter(({ part }) => part === 'rib' || part === 'rib-slotted' || part === 'soft-backing')
    .flatMap((p): number[] => {
      const outer = parts.find(({ id }) => id === p.part)?.layers[0]?.profile.outer;
      if (!outer) return [];
      const corners = flatten(outer, CHORD).map(([x, y]): Vec2 => {
        const [, across, along] = localise(platen, place(p.frame, [x, y, 0]));
        return [across, along];
      });
      return corners.flatMap((a, i): number[] => {
        const b = corners[(i + 1) % corners.length] ?? a;
        if (a[1] === b[1] || (a[1] - z) * (b[1] - z) > 0) return [];
        return [a[0] + ((z - a[1]) / (b[1] - a[1])) * (b[0] - a[0])];
      });
    });
  return Math.max(...fronts);
};

/**
 * The bevels that the finished face grinds: a blade leaned by what its setting says meets the
 * face between the ends of its bevel; the chord there, read off the placed outlines, gives the
 * angle, and the angle the height.
 */
export const measuredOf = (
  design: Design,
  v: Values,
  l: Layout,
  aims: readonly Aim[],
  parts: readonly Part[],
  placements: readonly Placement[],
): Result<Measured[]> => {
  const read = aims.map((aim): Measured => {
    const { blade, side, height, angle: wanted, tilt } = aim;
    const half = height / cos(radians(wanted)) / 2;
    const [low, high] = [v.contact - half, v.contact + half];
    const at = (z: number): number => frontAt(design, parts, placements, z);
    const slope = degrees(atan2(at(low) - at(high), high - low));
    const angle = tilt - design.grinder.lean - slope;
    const u = bevelPlace(blade);
    const edges = edgeOffsets(blade, u, blade.edge.wanted);
    return {
      blade: blade.name,
      side,
      u,
      angle,
      bevelHeight: bevelAt(aim, u, angle),
      edgeThickness: edges.left + edges.right,
      certainty: l.round ? exact : { kind: 'estimate', basis: words.setting.basis.soft },
    };
  });
  return read.every(({ angle }) => Number.isFinite(angle))
    ? ok(read)
    : fail(problem('not-measured', 'fixture.parameters.contact', words.issues.notMeasured));
};
