import { exact, type Certainty } from '../../core/certainty.ts';
import type { Unit } from '../../core/parameter.ts';
import { text } from '../../text/index.ts';
import { greatest, type EdgePlace } from '../measure/report.ts';
import type { CureFact, SideCure, StripWish } from './types.ts';

const words = text.virtual.cure.facts;

/** Errors of lines and edges on the grid of the proof, mm: see `index.ts`. */
const GRID: Certainty = { kind: 'bounded', by: 0.03, reason: text.virtual.certainty.grid };

/** The numbers of a cure that belong on the set-up sheet. */
export const factsOf = (
  sides: readonly SideCure[],
  edge: readonly EdgePlace[],
  wish: StripWish,
): CureFact[] => {
  const fact = (
    key: string,
    label: string,
    value: number,
    certainty: Certainty = exact,
    unit: Unit = 'mm',
  ): CureFact => ({ key, label, value, unit, certainty });
  const standing = greatest(
    edge.filter(({ steers }) => steers),
    (place) => place.standing,
  );
  const each = sides.flatMap(({ side, profile, setoff, without, with: after, measures }) => {
    const made = profile.map(({ thickness }) => thickness - wish.tape);
    const { radius } = measures.hollow;
    return [
      fact(`strip-setoff-${side}`, words.setoff(side), setoff),
      fact(`strip-least-${side}`, words.least(side), Math.min(...made)),
      fact(`strip-most-${side}`, words.most(side), Math.max(...made)),
      ...(Number.isFinite(radius)
        ? [fact(`strip-hollow-${side}`, words.hollow(side), radius)]
        : []),
      fact(`strip-without-${side}`, words.without(side), without, GRID),
      fact(`strip-with-${side}`, words.with(side), after, GRID),
    ];
  });
  const [first] = sides;
  const [from, to] = [first?.strip.us[0] ?? 0, first?.strip.us.at(-1) ?? 0];
  return [
    ...each,
    fact('strip-from', words.from, from),
    fact('strip-length', words.length, to - from),
    fact('strip-bottom', words.bottom, first?.strip.bottom ?? 0),
    fact('strip-step-radius', words.radius, wish.stepRadius),
    fact('strip-stuck', words.stick, ((to - from) * wish.height) / 100, exact, 'count'),
    fact('strip-corner', words.corner, Math.min(...sides.map(({ measures }) => measures.corner))),
    fact(
      'strip-contact',
      words.contact,
      Math.max(...sides.map(({ measures }) => measures.contact)),
    ),
    fact(
      'strip-yaw',
      words.yaw,
      Math.max(...sides.map(({ measures }) => measures.yaw)),
      { kind: 'estimate', basis: text.virtual.certainty.beds },
      'deg',
    ),
    fact('strip-standing', words.standing, standing.value, GRID),
  ];
};
