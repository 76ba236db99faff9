import {
  choiceParameter,
  number,
  ofMachine,
  ofSheet,
  text,
  type ValuesOf,
} from '../../src/family/index.ts';
import { parameters as shared } from '../shared/parameters.ts';

const words = text.family.edgeRest.parameters;
const { guide, mount, base, wing, guideLength, guidePlay } = shared;
const { runningClearance, plungeMargin, padMargin, handDistance } = shared;

/** Every number and choice of the fixture; base, guide and feed are shared. */
export const parameters = {
  wheel: choiceParameter(words.wheel, 'contact'),
  lip: choiceParameter(words.lip, 'pads'),
  lipThickness: number(words.lipThickness, 'mm', 0.5, 1, 2, 0.1),
  lipHeight: number(words.lipHeight, 'mm', 0.5, 1.2, 4, 0.1),
  wear: number(words.wear, 'mm', 2, 4, 6, 0.5),
  leastWeb: number(words.leastWeb, 'mm', 0.1, 0.5, 5, 0.05),
  guide,
  mount,
  plate: ofSheet(number(words.plate, 'mm', 5, 6, 8, 0.5)),
  base,
  noseGap: number(words.noseGap, 'mm', 0.5, 1.2, 3.175),
  wing,
  stepWing: number(words.stepWing, 'mm', 10, 18, 40, 1),
  guideLength,
  guidePlay,
  travelReserve: number(words.travelReserve, 'mm', 0.5, 2, 6, 0.5),
  builtTravel: ofMachine(number(words.builtTravel, 'mm', 0, 0, 60), words.builtTravel, {
    key: 'builtTravel',
    is: 0,
  }),
  builtNoseTravel: ofMachine(number(words.builtNoseTravel, 'mm', 0, 0, 60), words.builtNoseTravel, {
    key: 'builtNoseTravel',
    is: 0,
  }),
  runningClearance,
  plungeMargin,
  tipOverlap: number(text.family.shared.parameters.tipOverlap, 'mm', 1, 8, 150, 1),
  settingTolerance: number(words.settingTolerance, 'mm', 0.01, 0.03, 0.3, 0.01),
  pushReserve: number(words.pushReserve, 'ratio', 0, 0.1, 0.5, 0.01),
  wheelShare: number(words.wheelShare, 'ratio', 0.2, 0.5, 0.9, 0.05),
  padMargin,
  guardRise: number(words.guardRise, 'mm', 6, 12, 40, 1),
  tipLift: number(words.tipLift, 'deg', 0, 1, 10, 0.5),
  handDistance,
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
