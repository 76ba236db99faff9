import {
  chain,
  createWorkshop,
  fail,
  hasError,
  valuesOf,
  type Design,
  type Family,
  type Result,
  type Workshop,
} from '../../src/family/index.ts';
import { aimsOf } from './aim.ts';
import { card } from './card.ts';
import { fixtureOf, type CarrierFixture } from './fixture.ts';
import { layoutIssues, layoutOf } from './layout.ts';
import { parameters } from './parameters.ts';

/** From a valid design to a solved carrier, or the issues that say why there is none. */
export const solve = (
  design: Design,
  workshop: Workshop = createWorkshop(),
): Result<CarrierFixture> => {
  const v = valuesOf(parameters, design.fixture.parameters);
  const wrong = layoutIssues(design, v);
  const { platen } = design.grinder;
  if (hasError(wrong) || platen.kind === 'none') return fail(...wrong);
  return chain(layoutOf(v, platen, design.making.plates.process), (l) =>
    chain(aimsOf(design, v, l), (aims) => fixtureOf(design, v, l, platen, aims, workshop)),
  );
};

export const backingCarrier: Family = { ...card, solve };
