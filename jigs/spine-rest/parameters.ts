import { choiceParameter, number, ofSheet, text, type ValuesOf } from '../../src/family/index.ts';
import { parameters as shared } from '../shared/parameters.ts';

const words = text.family.spineRest.parameters;
const { guide, mount, base, wing, guideLength, guidePlay } = shared;
const { runningClearance, plungeMargin, padMargin, handDistance } = shared;

/** Every number and choice of the fixture, with unit, range and reason. */
export const parameters = {
  guide,
  mount,
  plate: ofSheet(number(words.plate, 'mm', 5, 6, 8, 0.5)),
  base,
  noseGap: number(words.noseGap, 'mm', 0.5, 1, 3.175),
  wing,
  step: choiceParameter(words.step, 'straight'),
  stepWing: number(words.stepWing, 'mm', 5, 10, 25, 1),
  guideLength,
  guidePlay,
  travelReserve: number(words.travelReserve, 'mm', 0.5, 2, 6, 0.5),
  runningClearance,
  leastBearing: number(words.leastBearing, 'mm', 0.2, 0.5, 3),
  plungeMargin,
  tipOverlap: number(text.family.shared.parameters.tipOverlap, 'mm', 1, 8, 150, 1),
  aim: choiceParameter(words.aim, 'line'),
  settingTolerance: number(words.settingTolerance, 'mm', 0.01, 0.05, 0.3, 0.01),
  pushReserve: number(words.pushReserve, 'ratio', 0, 0.1, 0.5, 0.01),
  padMargin,
  guardRise: number(words.guardRise, 'mm', 6, 12, 40, 1),
  leastEdge: number(words.leastEdge, 'mm', 0.1, 0.2, 1, 0.05),
  tipLift: number(words.tipLift, 'deg', 0, 2, 10, 0.5),
  handDistance,
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
