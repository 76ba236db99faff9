import {
  SIDES,
  bladeMesh,
  chain,
  all,
  fail,
  ok,
  placeAt,
  problem,
  text,
  type Blade,
  type Certainty,
  type Measured,
  type Mesh,
  type Result,
  type Side,
  type SpineRestPlan,
} from '../../../src/family/index.ts';
import { expectedOf } from '../../shared/grinding.ts';
import type { Question } from '../checks/question.ts';
import { gauge } from '../../shared/measured/measure.ts';
import { ground, workpiece, type Pass } from './cut-pass.ts';
import { sectionAt } from '../../shared/measured/section-at.ts';

/** Chord error of the blade that is ground, mm: far below what is measured. */
export const CHORD = 1e-4;

type PlanSetting = SpineRestPlan['settings'][number];

const words = text.family.spineRest.issues;

/** The solver's place nearest to u: the stop the maker is told, and the trust in it. */
const nearest = <T extends { readonly u: number }>(
  places: readonly T[],
  u: number,
): T | undefined =>
  places.reduce<T | undefined>(
    (best, place) => (best && Math.abs(best.u - u) <= Math.abs(place.u - u) ? best : place),
    undefined,
  );

export const certaintyAt = (
  plan: SpineRestPlan,
  blade: string,
  side: Side,
  u: number,
): Certainty => {
  const line = plan.lines.find((l) => l.blade === blade && l.side === side);
  return nearest(line?.places ?? [], u)?.certainty ?? { kind: 'estimate', basis: words.noLine };
};

/** The passes at a place, in the order of the sequence, as the fixture and the maker make them. */
const passesAt = (q: Question, blade: string, u: number): Pass[] =>
  q.plan.settings.flatMap((setting: PlanSetting): Pass[] => {
    const place = nearest(setting.blades.find((b) => b.blade === blade)?.places ?? [], u);
    const step = q.place(setting.id).find(({ name }) => name === 'step');
    if (!place || !step) return [];
    const { nose, slide, levels } = q.context.l;
    return [
      {
        side: setting.side,
        lean: q.plan.lean,
        edge: place.edge,
        contacts: {
          noseHalf: nose.half,
          stepHalf: slide.half,
          stepTop: levels.stepTop,
          setoff: step.frame.origin[1],
        },
      },
    ];
  });

export const notSettled = (blade: string, u: number) =>
  fail(problem('not-settled', 'blades', words.notSettled(blade, u)));

/** Grinds the blank at one place through all passes and measures both sides there. */
const measuredAt = (q: Question, blade: Blade, blank: Mesh, u: number): Result<Measured[]> => {
  const at = placeAt(blade, u, 2 * q.context.l.nose.half);
  const passes = passesAt(q, blade.name, u);
  const contacts = passes[0]?.contacts;
  if (!contacts) return ok([]);
  let piece = workpiece(blank, at, contacts);
  for (const pass of passes) {
    const next = ground(piece, pass, at);
    if (!next) return notSettled(blade.name, u);
    piece = next;
  }
  const section = sectionAt(piece.slice, at);
  const sides = SIDES.filter((side) => passes.some((p) => p.side === side));
  return all(
    sides.map((side): Result<Measured> => {
      const found = gauge(section, side);
      if (!found) return notSettled(blade.name, u);
      const certainty = certaintyAt(q.plan, blade.name, side, u);
      return ok({ blade: blade.name, side, u, ...found, certainty });
    }),
  );
};

/**
 * What the finished blades show at heel, middle and tip: each blank is settled into nose and step
 * as they stand, cut by the abrasive face at every stop of the sequence, sliced and measured.
 */
export const measuredOf = (q: Question): Result<Measured[]> => {
  const results = q.design.blades.map((blade) => {
    const { blade: blank } = bladeMesh(blade, { chord: CHORD });
    const expected = expectedOf(q.plan.settings, blade.name);
    return chain(all(expected.map(({ u }) => measuredAt(q, blade, blank, u))), (lists) =>
      ok(lists.flat()),
    );
  });
  return chain(all(results), (lists) => ok(lists.flat()));
};
