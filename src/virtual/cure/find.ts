import { atan2, cos, sin } from '../../core/trigonometry.ts';
import { edgeOffsetsOn, wantedHeightAt, type Wanted } from '../../blade/bevel.ts';
import { placeOn } from '../../blade/place.ts';
import type { Shape } from '../../blade/shape.ts';
import { radians } from '../../core/units.ts';
import type { Field } from '../field.ts';
import { runPass } from '../grind.ts';
import type { Made } from '../mirror.ts';
import { greatest, linesOn, type Judged, type LinePlace } from '../measure/report.ts';
import type { PassResult, SpineRestPass } from '../types.ts';
import { demandsOf, gathered, type LinePoint } from './correct.ts';
import { outerFor, setoffWith, type StripPlace } from './sum.ts';
import type { StripWish } from './types.ts';

/** What is known before a strip is looked for on one side. */
export interface Search {
  readonly shape: Shape;
  /** The blade as it comes to the pass, on a coarse grid of this step. */
  readonly field: Field;
  readonly step: number;
  /** The last belt of the side, with a straight step. */
  readonly pass: SpineRestPass;
  readonly wanted: Wanted;
  readonly wish: StripWish;
}

/** A strip that was tried, and what it does. */
export interface Tried {
  readonly pass: SpineRestPass;
  readonly nodes: readonly number[];
  readonly out: readonly number[];
  readonly bottom: number;
  readonly setoff: number;
  readonly result: PassResult;
  readonly lines: readonly LinePlace[];
  /** Greatest deviation that counts, mm, and where. */
  readonly off: { readonly u: number; readonly value: number };
}

/** What the places of a blade are judged by in a pass. */
export const judgedBy = ({ holding, stroke }: SpineRestPass): Judged => ({
  seat: 2 * holding.body.noseHalf,
  stroke,
});

/** Spacing of the strip's nodes, mm. */
const SPACING = 7;
/** Rounds of correction; as good as it gets when this share of what is allowed is met. */
const ROUNDS = 14;
const ENOUGH = 0.15;
/** Rounds without anything that much better after which none is looked for. */
const PATIENCE = 3;
const BETTER = 0.95;
/** Within this share of what is allowed a round that is not that much better is the last one. */
const FAIR = 1 / 3;
const WORTH = 0.8;

/** Section of the blade at place m as a strip on it stands, for a line height and an edge. */
export const stripPlace = (
  { shape, pass, wanted }: Search,
  m: number,
  bottom: number,
): StripPlace => {
  const seat = 2 * pass.holding.body.noseHalf;
  const { u, height, thickness, spine } = placeOn(shape, m, seat);
  const edge = edgeOffsetsOn(shape, u, pass.edge)[pass.side];
  const bevel = wantedHeightAt(shape.blade.line.follow, wanted, height);
  const lean = radians(pass.surface.lean);
  const tilt = atan2(thickness / 2 - edge, bevel) + lean;
  return { height, bottom: bottom - spine[1], near: thickness / 2, edge, tilt, lean };
};

/** The wanted line at the places that count. */
const wantedLine = (
  { shape, pass, wanted }: Search,
  steering: readonly LinePlace[],
): LinePoint[] => {
  const seat = 2 * pass.holding.body.noseHalf;
  return steering.map(({ u }): LinePoint => {
    const { edge, height, slope } = placeOn(shape, u, seat);
    const bevel = wantedHeightAt(shape.blade.line.follow, wanted, height);
    const at = radians(slope);
    const [pu, pv] = [edge[0] + bevel * sin(at), edge[1] - bevel * cos(at)];
    return { u: pu, v: pv, half: shape.thickness.value(pu) / 2, bevel };
  });
};

/**
 * The pass with a strip on the blade and a rounded step that stands `at` along the stroke. The
 * stroke goes on until the belt's heel end has met the last place that counts.
 */
const withStrip = (
  { pass, wish }: Search,
  strip: { nodes: readonly number[]; out: readonly number[]; bottom: number },
  { at, to }: { readonly at: number; readonly to: number },
  setoff: number,
): SpineRestPass => ({
  ...pass,
  holding: {
    ...pass.holding,
    setoff,
    body: { ...pass.holding.body, step: { kind: 'narrow', radius: wish.stepRadius, at } },
    strip: { us: strip.nodes, out: strip.out, bottom: strip.bottom },
  },
  stroke: { ...pass.stroke, to },
});

/**
 * Looks for the strip that brings one side's grind line to the wanted one. It starts from the
 * section model's sum at every place, then grinds virtually and corrects: each point of the wanted
 * line asks the place of the strip that stood at the step in the pose that decided it. A strip
 * thicker by d tips the blade by d over the height of the edge above the strip, and lowers the face
 * at a bevel's height b by b times that. The strip keeps its least thickness by moving the step
 * with it.
 *
 * The strip ends with the last place that counts. So that the belt's heel end still comes there, a
 * step that is not centred stands that much nearer to the plunge. Returns every strip that was tried, the best first. `made`: passes of the other side's search.
 */
export const findStrip = (search: Search, made: Made[] = []): Tried[] => {
  const { shape, field, step, pass, wish } = search;
  const { from, width } = pass.stroke;
  const linesIn = linesOn(shape, field, pass.side, judgedBy(pass).seat);
  const steering = linesIn(field, pass.stroke).filter(({ steers }) => steers);
  // The last place that counts: there the strip ends.
  const end = steering.at(-1)?.u ?? shape.length;
  const beyond = wish.centred ? 0 : width / 2;
  const to = Math.max(from, Math.min(pass.stroke.to, end + beyond));
  const at = Math.min(0, end - to);
  const parts = Math.max(2, Math.ceil((to - from) / SPACING));
  const nodes = Array.from({ length: parts + 1 }, (_, i) => from + at + ((to - from) * i) / parts);
  const bottom = Math.max(0, ...nodes.map(shape.spine.value));
  const thinnest = (m: number): number => shape.thickness.value(m) / 2 + wish.least + wish.tape;

  const places = nodes.map((m) => stripPlace(search, m, bottom));
  let setoff = Math.max(...places.map((place, k) => setoffWith(place, thinnest(nodes[k] ?? 0))));
  let out = places.map((place) => outerFor(place, setoff));
  const points = wantedLine(search, steering);
  const tried: Tried[] = [];
  let best = 0;
  for (let round = 0; round < ROUNDS; round += 1) {
    const now = withStrip(search, { nodes, out, bottom }, { at, to }, setoff);
    const result = runPass(shape, field, field, now, step, made);
    const lines = linesIn(result.after, now.stroke);
    const off = greatest(
      lines.filter(({ steers }) => steers),
      ({ deviation }) => deviation,
    );
    const [left, least] = [Math.abs(off.value), Math.abs(tried[best]?.off.value ?? Infinity)];
    tried.push({ pass: now, nodes, out, bottom, setoff, result, lines, off });
    if (left < BETTER * least) best = round;
    const fair = left < FAIR * wish.allowed && left > WORTH * least;
    if (fair || left < ENOUGH * wish.allowed || round - best >= PATIENCE) break;
    const demands = demandsOf(points, result.reached, pass.surface, pass.stroke.width / 2);
    const changes = demands.map(({ m, over, bevel }) => {
      const { height, bottom: above } = stripPlace(search, m + at, bottom);
      return { m: m + at, by: (over * (height - above)) / bevel };
    });
    const by = gathered(nodes, changes);
    out = out.map((o, k) => o + (by[k] ?? 0));
    const short = Math.max(...nodes.map((m, k) => thinnest(m) - (out[k] ?? 0)));
    out = out.map((o) => o + short);
    setoff += short * cos(places[0]?.tilt ?? 0);
  }
  return tried.sort((p, q) => Math.abs(p.off.value) - Math.abs(q.off.value));
};
