import { SIDES, type Blade, type Side } from '../blade/schema.ts';
import { bladeLength } from '../blade/shape.ts';
import { chain, ok, type Result } from '../core/result.ts';
import { planSpineRest } from '../grind/spine-rest/plan.ts';
import type { SpineRestInput } from '../grind/spine-rest/types.ts';
import { strokeOf } from '../grind/spine-rest/windows.ts';
import { text } from '../text/index.ts';
import { passesOf, startOf } from './from-plan.ts';
import { grindVirtually } from './grind.ts';
import type { SpineRestBody } from './hold/spine-settle.ts';
import { edgePlaces, greatest, linePlaces } from './measure/report.ts';
import type { SpineRestPass, Start } from './types.ts';

/** One way of grinding a blade at given settings, and what it leaves; mm. */
export interface StrokeCandidate {
  /** Blade still on the belt at the end of the stroke; the belt's width when the tip stays on it. */
  readonly tipOverlap: number;
  /** The side each belt grinds first. */
  readonly first: Side;
  /** Whether both sides see the last belt a second time. */
  readonly twice: boolean;
  /** Thickest edge less thinnest over the places that count. */
  readonly uneven: number;
  /** Most that stands over the edge wanted, and where. */
  readonly standing: { readonly u: number; readonly value: number };
  /** Greatest deviation of both grind lines from the wanted ones. */
  readonly line: number;
}

export interface StrokeAdvice {
  /** From the evenest edge on; the simpler way first where two are as good. */
  readonly candidates: readonly StrokeCandidate[];
  readonly best: StrokeCandidate;
  /** The way the plan has it: its own stroke, left first, once. */
  readonly planned: StrokeCandidate;
  readonly sentence: string;
}

/** Grid on which ways are compared. */
const COARSE = { step: 3, rows: 24 } as const;
/** Stroke ends that are tried, mm of blade on the belt, besides half of it, all of it and the plan's. */
const OVERLAPS = [3, 8] as const;
/** Edges as even as this are the same to a maker, mm. */
const SAME = 0.01;

/** The same blade seen in a mirror: grinding its left first is grinding the right first. */
const mirrored = (blade: Blade): Blade => ({
  ...blade,
  bevels: { left: blade.bevels.right, right: blade.bevels.left },
  edge: { ...blade.edge, shareLeft: 1 - blade.edge.shareLeft },
});

/** A blade with its passes as planned for one order of the sides. */
interface Ordered {
  readonly blade: Blade;
  readonly first: Side;
  readonly passes: readonly SpineRestPass[];
  readonly start: Start;
}

const ordered = (
  input: SpineRestInput,
  blade: Blade,
  first: Side,
  body: SpineRestBody,
): Result<Ordered> =>
  chain(planSpineRest({ ...input, blades: [blade] }), (plan) =>
    ok({ blade, first, passes: passesOf(blade, input, plan, body), start: startOf(blade, plan) }),
  );

const tried = (
  { blade, first, passes, start }: Ordered,
  input: SpineRestInput,
  tipOverlap: number,
  twice: boolean,
): StrokeCandidate => {
  const { width } = input.grinder.belt;
  const { plungeStop } = input.parameters;
  const length = bladeLength(blade.outline);
  const strokeTo = (overlap: number) => strokeOf(width, length, plungeStop, overlap);
  const last = passes.slice(-2);
  const { shape, finished } = grindVirtually({
    blade,
    passes: [...passes, ...(twice ? last : [])].map((pass) => ({
      ...pass,
      stroke: strokeTo(tipOverlap),
    })),
    start,
    resolution: COARSE,
  });
  // All ways are judged over the same places: those of the longest stroke.
  const seat = 2 * (passes[0]?.holding.body.noseHalf ?? 0);
  const judged = { seat, stroke: strokeTo(Math.min(...OVERLAPS)) };
  const edge = edgePlaces(shape, finished, passes.at(-1)?.edge ?? 0, judged).filter(
    ({ steers }) => steers,
  );
  const lines = SIDES.flatMap((side) => linePlaces(shape, finished, side, judged)).filter(
    ({ steers }) => steers,
  );
  const thick = edge.map(({ thickness }) => thickness);
  return {
    tipOverlap,
    first,
    twice,
    uneven: Math.max(...thick) - Math.min(...thick),
    standing: greatest(edge, (place) => place.standing),
    line: Math.abs(greatest(lines, ({ deviation }) => deviation).value),
  };
};

/**
 * Which stroke, which side first, and whether the last belt is to be taken twice, leave the evenest
 * edge on one blade: all ways ground virtually at the setoffs the plan has for them, and compared
 * over the same places. The way as planned is among them. Fails where the plan does.
 */
export const adviseStroke = (
  input: SpineRestInput,
  blade: Blade,
  body: SpineRestBody,
): Result<StrokeAdvice> =>
  chain(ordered(input, blade, 'left', body), (left) =>
    chain(ordered(input, mirrored(blade), 'right', body), (right) => {
      const { width } = input.grinder.belt;
      const own = input.parameters.tipOverlap;
      const longest = bladeLength(blade.outline);
      const overlaps = [...new Set([own, ...OVERLAPS, width / 2, width])].filter(
        (overlap) => overlap <= longest,
      );
      const planned = tried(left, input, own, false);
      const others = [left, right].flatMap((way) =>
        overlaps.flatMap((overlap) =>
          [false, true]
            .filter((twice) => way !== left || overlap !== own || twice)
            .map((twice) => tried(way, input, overlap, twice)),
        ),
      );
      // The sort is stable: the planned way and the shorter ones stand first among equals.
      const rank = ({ uneven }: StrokeCandidate): number => Math.round(uneven / SAME);
      const candidates = [planned, ...others].sort(
        (p, q) => rank(p) - rank(q) || Number(p.twice) - Number(q.twice),
      );
      const best = candidates[0] ?? planned;
      return ok({
        candidates,
        best,
        planned,
        sentence: text.virtual.advice(best, planned.uneven, best.tipOverlap >= width),
      });
    }),
  );
