import {
  SIDES,
  all,
  chain,
  edgeOffsets,
  fail,
  ok,
  problem,
  text,
  wantedBevel,
  type Blade,
  type Design,
  type Result,
  type Side,
} from '../../src/family/index.ts';

const words = text.family.bevelGauge;

/** One side of one blade: what is wanted and how far the blade leans for it. */
export interface Lean {
  readonly blade: Blade;
  readonly side: Side;
  /** Between midplane and ground face, degrees. */
  readonly angle: number;
  /** Of the blade from upright: the angle plus the lean of the platen, degrees. */
  readonly tilt: number;
  /** Thickness behind the edge of this side, from the midplane, mm. */
  readonly edge: number;
}

/** Most that a gauge shows, degrees. */
const MOST = 30;

const leanOf = (design: Design, blade: Blade, i: number, side: Side): Result<Lean> => {
  const path = `blades.${String(i)}.bevels.${side}`;
  const wanted = wantedBevel(blade, side);
  if (wanted === undefined) {
    const why = words.issues.notFlat(blade.name, words.side[side], blade.bevels[side].kind);
    return fail(problem('not-flat', path, why));
  }
  const tilt = wanted.angle + design.grinder.lean;
  if (!(tilt > 0 && tilt <= MOST)) {
    const why = words.issues.lean(blade.name, words.side[side], tilt, MOST);
    return fail(problem('lean-out-of-range', path, why));
  }
  const edge = edgeOffsets(blade, 0, blade.edge.wanted)[side];
  return ok({ blade, side, angle: wanted.angle, tilt, edge });
};

/** Both sides of every blade, in the order of the design. */
export const leansOf = (design: Design): Result<Lean[]> =>
  chain(
    all(design.blades.flatMap((blade, i) => SIDES.map((side) => leanOf(design, blade, i, side)))),
    (leans) => ok(leans),
  );
