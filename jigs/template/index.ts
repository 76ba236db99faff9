import {
  chain,
  fail,
  ok,
  problem,
  text,
  valuesOf,
  type Design,
  type Family,
  type Fixture,
  type Result,
} from '../../src/family/index.ts';
import { card } from './card.ts';
import { fixtureOf } from './fixture.ts';
import { leansOf } from './lean.ts';
import { parameters } from './parameters.ts';

const { issues } = text.family.bevelGauge;

/** From a valid design to a solved fixture, or the issues that say why there is none. */
const solve = (design: Design): Result<Fixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const have = design.making.plates.thicknesses;
  if (!have.includes(v.thickness)) {
    const why = issues.thickness(v.thickness, have);
    return fail(problem('thickness-missing', 'fixture.parameters.thickness', why));
  }
  return chain(leansOf(design), (leans) => ok(fixtureOf(design, v, leans)));
};

/** The bevel gauge: the smallest true family, to copy for a new one. */
export const bevelGauge: Family = { ...card, solve };
