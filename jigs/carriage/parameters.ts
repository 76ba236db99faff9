import { choiceParameter, number, ofSheet, text, type ValuesOf } from '../../src/family/index.ts';
import { parameters as shared } from '../shared/parameters.ts';

const words = text.family.carriage.parameters;

/** Every number and choice of the fixture, with unit, range and reason. */
export const parameters = {
  upright: choiceParameter(words.upright, 'plates'),
  mount: choiceParameter(words.mount, 'pattern'),
  plate: ofSheet(number(words.plate, 'mm', 7, 8, 10, 0.5)),
  base: { ...shared.base, ...words.base },
  beltGap: number(words.beltGap, 'mm', 0.5, 1, 3.175),
  length: number(words.length, 'mm', 80, 100, 160, 1),
  edgeHeight: number(words.edgeHeight, 'mm', 60, 95, 140, 1),
  jawGap: number(words.jawGap, 'mm', 3, 6, 25, 0.5),
  jawWidth: number(words.jawWidth, 'mm', 16, 20, 30, 1),
  tabPlay: number(words.tabPlay, 'mm', 0.05, 0.15, 0.4, 0.01),
  travelReserve: number(words.travelReserve, 'mm', 0.5, 1.5, 5, 0.5),
  runningClearance: number(words.runningClearance, 'mm', 0.2, 0.4, 3),
  plungeMargin: number(words.plungeMargin, 'mm', 0, 1, 6, 0.5),
  tipOverlap: number(words.tipOverlap, 'mm', 1, 8, 150, 1),
  tipSettings: number(words.tipSettings, 'count', 0, 0, 2, 1),
  tipAllowance: number(words.tipAllowance, 'mm', 0.02, 0.5, 3, 0.01),
  heelReserve: number(words.heelReserve, 'ratio', 0, 0.1, 0.5, 0.01),
  angleTolerance: number(words.angleTolerance, 'deg', 0.005, 0.02, 0.2, 0.005),
  fenceTolerance: number(words.fenceTolerance, 'mm', 0.01, 0.05, 0.3, 0.01),
  leastEdge: number(words.leastEdge, 'mm', 0.1, 0.2, 1, 0.05),
  handDistance: number(words.handDistance, 'mm', 40, 50, 120, 1),
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
