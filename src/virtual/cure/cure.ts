import { bevelPlace, wantedOn } from '../../blade/bevel.ts';
import { shapeOf } from '../../blade/shape.ts';
import { SIDES, type Side } from '../../blade/schema.ts';
import { hasError, problem, type Issue } from '../../core/issue.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { asin } from '../../core/trigonometry.ts';
import { radians } from '../../core/units.ts';
import { text } from '../../text/index.ts';
import { grindVirtually, startField } from '../grind.ts';
import { blankField } from '../field.ts';
import type { Made } from '../mirror.ts';
import { outerFace, type Strip } from '../hold/strip.ts';
import { edgePlaces, greatest, linesOn, type LinePlace } from '../measure/report.ts';
import type { PassResult, VirtualPass } from '../types.ts';
import { measuresOf, stripIssues } from './check.ts';
import { factsOf } from './facts.ts';
import { findStrip, judgedBy, stripPlace, type Search, type Tried } from './find.ts';
import { stripFrame, stripPart } from './part.ts';
import { setoffWith } from './sum.ts';
import type { Cure, CureInput, Measures, Proved } from './types.ts';
import { lastPass, lineWithout } from './without.ts';

const words = text.virtual.cure.issues;

/** Grid on which a strip is looked for: coarser along the blade than the proof. */
const COARSE = { step: 3, rows: 24 } as const;
/** Share of the work that the search is, roughly. */
const SEARCHED = 0.5;
/** Strips that differ by less than this are one, mm. */
const SAME = 0.01;

/** A side with the best strip that was found for it. */
interface Found {
  readonly search: Search;
  readonly best: Tried;
  readonly strip: Strip;
  readonly measures: Measures;
}

/** Tilt of the blade while place m is nearest the belt's middle, radians. */
const tiltAt = ({ reached }: PassResult, m: number): number => {
  const nearest = reached.reduce((best, at) =>
    Math.abs(at.pose.m - m) < Math.abs(best.pose.m - m) ? at : best,
  );
  return asin(-nearest.pose.z[3]);
};

/** One strip's search on the blade as it comes: earlier belts stay outside the finished face. */
const searchFor = ({ virtual, wish }: CureInput, side: Side, made: Made[]): Found | undefined => {
  const shape = shapeOf(virtual.blade);
  const pass = lastPass(virtual, side);
  if (pass === undefined) return undefined;
  const wanted = wantedOn(shape, side, 2 * pass.holding.body.noseHalf);
  if (wanted === undefined) return undefined;
  const field = startField(shape, blankField(shape, COARSE), virtual.start);
  const search = { shape, field, step: COARSE.step, pass, wanted, wish };
  const [best] = findStrip(search, made);
  if (best === undefined) return undefined;
  const strip = { us: best.nodes, out: best.out, bottom: best.bottom };
  return { search, best, strip, measures: measuresOf(search, best, strip) };
};

/**
 * All belts with the strip: the same edges, and as much steeper than the last belt as they were,
 * taken at the place where bevels are promised.
 */
const passesWith = ({ virtual, tilts }: CureInput, found: readonly Found[]): VirtualPass[] =>
  virtual.passes.map((pass) => {
    const own = found.find(({ search }) => search.pass.side === pass.side);
    if (own === undefined) return pass;
    const last = own.search.pass;
    const m = Math.max(bevelPlace(virtual.blade), last.stroke.from);
    const { holding, stroke } = own.best.pass;
    const tiltIn = ({ id }: VirtualPass): number => radians(tilts.get(id) ?? NaN);
    const steeper = pass === last ? 0 : tiltIn(pass) - tiltIn(last);
    const at = (edge: number, more: number): number => {
      const search = { ...own.search, pass: { ...last, edge } };
      const place = stripPlace(search, m, own.strip.bottom);
      const tilt = tiltAt(own.best.result, m) + more;
      return setoffWith({ ...place, tilt }, outerFace(own.strip, m));
    };
    const setoff = holding.setoff + at(pass.edge, steeper) - at(last.edge, 0);
    return { ...pass, holding: { ...holding, setoff }, stroke };
  });

/** Whether the two sides' strips are one strip turned over. */
const equal = ([a, b]: readonly Found[]): boolean =>
  a !== undefined &&
  b !== undefined &&
  a.strip.us.length === b.strip.us.length &&
  a.strip.us.every(
    (u, k) =>
      Math.abs(u - (b.strip.us[k] ?? NaN)) < SAME &&
      Math.abs((a.strip.out[k] ?? 0) - (b.strip.out[k] ?? NaN)) < SAME,
  );

const worst = (places: readonly LinePlace[]): { u: number; value: number } =>
  greatest(
    places.filter(({ steers }) => steers),
    ({ deviation }) => deviation,
  );

/**
 * The cure for a wandering grind line: a strip of varying thickness that the blade carries on its
 * far face, against a narrow rounded step, so that one setting tips the blade as much as each place
 * wants. Looked for on a coarse grid, then proved on the given one over every belt and both sides.
 * Fails, saying why, where no strip holds the line within what is allowed, where the far face has
 * no flat for it, or where step, nose or stroke do not allow it. The straight step has no say but in
 * the tilts. `progress` is told the share done.
 */
export const proveStrip = (
  input: CureInput,
  progress: (share: number) => void = () => undefined,
): Result<Proved> => {
  const { virtual, wish } = input;
  const made: Made[] = [];
  const found = SIDES.flatMap((side, i) => {
    progress(SEARCHED * (i / SIDES.length));
    return searchFor(input, side, made) ?? [];
  });
  if (found.length === 0) return fail(problem('no-line', 'blade.bevels', words.noPass));
  const issues = found.flatMap(({ search, best, measures }) => stripIssues(search, best, measures));
  if (hasError(issues)) return fail(...issues);

  const passes = passesWith(input, found);
  const cured = grindVirtually({ ...virtual, passes }, (share) =>
    progress(SEARCHED + (1 - SEARCHED) * share),
  );
  const { shape } = cured;
  const oneForBoth = equal(found);
  const sides = found.map(({ search, best, strip, measures }) => {
    const { side } = search.pass;
    const linesIn = linesOn(shape, cured.finished, side, judgedBy(search.pass).seat);
    const lines = linesIn(cured.finished, best.pass.stroke);
    return {
      side,
      strip,
      measures,
      profile: strip.us.map((u, k) => ({
        u,
        thickness: (strip.out[k] ?? 0) - shape.thickness.value(u) / 2,
      })),
      setoff: best.setoff,
      with: Math.abs(worst(lines).value),
      lines,
      part: stripPart(shape, strip, wish, oneForBoth ? 'both' : side),
      frame: stripFrame(shape, strip, wish, side),
    };
  });
  const off = found.flatMap(({ search: { pass } }, k): Issue[] => {
    const { u, value } = worst(sides[k]?.lines ?? []);
    const missed = cured.passes
      .filter((result) => result.pass.side === pass.side)
      .reduce((sum, result) => sum + result.missed.length, 0);
    return [
      ...(Math.abs(value) > wish.allowed
        ? [
            problem(
              'strip-line',
              'line.allowed',
              words.lineRemains(pass.side, Math.abs(value), u, wish.allowed),
            ),
          ]
        : []),
      ...(missed > 0
        ? [problem('strip-stand', 'stroke', words.cannotStand(pass.side, missed))]
        : []),
    ];
  });
  if (off.length > 0) return fail(...off);

  const edge = virtual.passes.at(-1)?.edge ?? 0;
  const judged = found.map(({ best }) => judgedBy(best.pass))[0];
  return ok({
    sides,
    oneForBoth,
    passes,
    cured,
    edge: judged === undefined ? [] : edgePlaces(shape, cured.finished, edge, judged),
  });
};

/** A proved strip beside the line without it; a note tells that none is needed. */
export const besideStraight = (
  proved: Proved,
  off: ReadonlyMap<Side, number>,
  wish: CureInput['wish'],
): Result<Cure> => {
  const sides = proved.sides.map((side) => ({ ...side, without: off.get(side.side) ?? NaN }));
  const without = Math.max(...sides.map((side) => side.without));
  const note: Issue = {
    ...problem('strip-not-needed', 'line.allowed', words.notNeeded(without, wish.allowed)),
    severity: 'note',
  };
  return ok(
    { ...proved, sides, facts: factsOf(sides, proved.edge, wish) },
    without <= wish.allowed ? [note] : [],
  );
};

/** `proveStrip`, beside what the straight step does. */
export const cureLine = (input: CureInput, progress?: (share: number) => void): Result<Cure> =>
  chain(proveStrip(input, progress), (proved) =>
    besideStraight(proved, lineWithout(input.virtual), input.wish),
  );
