import { choiceParameter, number, text, type ValuesOf } from '../../src/family/index.ts';

const words = text.family.spineRest.parameters;

/** Every number and choice of the fixture, with unit, range and reason. */
export const parameters = {
  guide: choiceParameter(words.guide, 'slots'),
  mount: choiceParameter(words.mount, 'pattern'),
  plate: number(words.plate, 'mm', 5, 6, 8, 0.5),
  base: number(words.base, 'mm', 6, 8, 12, 0.5),
  noseGap: number(words.noseGap, 'mm', 0.5, 1, 3.175),
  wing: number(words.wing, 'mm', 28, 32, 60, 1),
  stepWing: number(words.stepWing, 'mm', 5, 10, 25, 1),
  guideLength: number(words.guideLength, 'mm', 35, 50, 90, 1),
  guidePlay: number(words.guidePlay, 'mm', 0.02, 0.1, 0.5, 0.01),
  travelReserve: number(words.travelReserve, 'mm', 0.5, 2, 6, 0.5),
  runningClearance: number(words.runningClearance, 'mm', 0.2, 0.4, 3),
  leastBearing: number(words.leastBearing, 'mm', 0.2, 0.5, 3),
  plungeMargin: number(words.plungeMargin, 'mm', 0, 2.5, 8, 0.5),
  tipOverlap: number(words.tipOverlap, 'mm', 1, 8, 150, 1),
  aim: choiceParameter(words.aim, 'line'),
  settingTolerance: number(words.settingTolerance, 'mm', 0.01, 0.05, 0.3, 0.01),
  pushReserve: number(words.pushReserve, 'ratio', 0, 0.1, 0.5, 0.01),
  padMargin: number(words.padMargin, 'mm', 1, 2, 10, 0.5),
  guardRise: number(words.guardRise, 'mm', 6, 12, 40, 1),
  leastEdge: number(words.leastEdge, 'mm', 0.1, 0.2, 1, 0.05),
  tipLift: number(words.tipLift, 'deg', 0, 2, 10, 0.5),
  handDistance: number(words.handDistance, 'mm', 40, 50, 120, 1),
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
