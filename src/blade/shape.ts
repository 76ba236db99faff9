import { extended, joined, line, sagittaArc, sum, tangentArc, type Curve } from './curve.ts';
import { interpolate } from './interpolate.ts';
import type { Blade, Outline } from './schema.ts';

/**
 * Spine and edge of a blade as curves v(u): u from the plunge (0) to the tip (`length`), v from
 * the straight spine line (0) towards the edge. Beyond plunge and tip both run on straight; they
 * meet at the tip. Build it once where many places are asked for.
 */
export interface Shape {
  readonly blade: Blade;
  readonly length: number;
  readonly spine: Curve;
  readonly edge: Curve;
  /** Thickness of the blank, mm. */
  readonly thickness: Curve;
}

type Dimensions = Extract<Outline, { kind: 'dimensions' }>;

/**
 * Straight to the start of the drop, then an arc that leaves the spine line tangentially and
 * passes through the tip; the arc of the sagitta is added over the whole length.
 */
const spineOf = (o: Dimensions): Curve =>
  sum(
    sagittaArc(o.length, o.spineSagitta),
    joined(
      line(0, 0, 0),
      o.spineDropStart,
      tangentArc(o.spineDropStart, 0, 0, o.length, o.tipDrop),
    ),
  );

/** Straight from the heel to the belly, then an arc tangent to that line through the tip. */
const edgeOf = (o: Dimensions): Curve => {
  const slope = o.bellyStart > 0 ? (o.bellyHeight - o.heelHeight) / o.bellyStart : 0;
  return joined(
    line(o.bellyStart, o.bellyHeight, slope),
    o.bellyStart,
    tangentArc(o.bellyStart, o.bellyHeight, slope, o.length, o.tipDrop),
  );
};

/** Length from plunge to tip, mm. */
export const bladeLength = (outline: Outline): number =>
  outline.kind === 'dimensions' ? outline.length : (outline.spine.at(-1)?.[0] ?? 0);

const thicknessOf = (stations: Blade['thickness']): Curve => {
  const clamp = (u: number): number => {
    const last = stations.findIndex((s) => s.u >= u);
    const after = stations[last];
    const before = stations[last - 1];
    if (after === undefined) return stations.at(-1)?.t ?? 0;
    if (before === undefined) return after.t;
    return before.t + ((after.t - before.t) * (u - before.u)) / (after.u - before.u);
  };
  const slope = (u: number): number => {
    const i = stations.findIndex((s) => s.u > u);
    const after = stations[i];
    const before = stations[i - 1];
    return after && before ? (after.t - before.t) / (after.u - before.u) : 0;
  };
  return { value: clamp, slope, breaks: stations.map((s) => s.u) };
};

/** The curves of a valid blade. */
export const shapeOf = (blade: Blade): Shape => {
  const { outline } = blade;
  const length = bladeLength(outline);
  const [spine, edge] =
    outline.kind === 'dimensions'
      ? [spineOf(outline), edgeOf(outline)]
      : [interpolate(outline.spine), interpolate(outline.edge)];
  return {
    blade,
    length,
    spine: extended(spine, 0, length),
    edge: extended(edge, 0, length),
    thickness: thicknessOf(blade.thickness),
  };
};
