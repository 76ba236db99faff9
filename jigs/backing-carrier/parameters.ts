import {
  choiceParameter,
  number,
  ofMachine,
  ofSheet,
  text,
  type ValuesOf,
} from '../../src/family/index.ts';

const words = text.family.backingCarrier.parameters;
/** Over the platen its bolts do not matter. */
const overIt = { key: 'place', is: 'over' } as const;

/** Every number and choice of the carrier, with unit, range and reason. */
export const parameters = {
  face: choiceParameter(words.face, 'soft'),
  place: choiceParameter(words.place, 'over'),
  softThickness: number(words.softThickness, 'mm', 2, 5, 10, 0.5),
  modulus: number(words.modulus, 'N/mm2', 2, 20, 200, 1),
  tension: ofMachine(number(words.tension, 'N/mm', 0.5, 3, 10, 0.1), words.tension, {
    key: 'face',
    is: 'radius',
  }),
  push: number(words.push, 'N', 5, 40, 150, 1),
  radius: number(words.radius, 'mm', 300, 1000, 5000, 10),
  depth: number(words.depth, 'mm', 12, 18, 40, 0.5),
  plate: ofSheet(number(words.plate, 'mm', 4, 6, 10, 0.5)),
  cheek: ofSheet(number(words.cheek, 'mm', 4, 6, 8, 0.5)),
  platenThickness: ofMachine(
    number(words.platenThickness, 'mm', 6, 8, 25, 0.5),
    words.platenThickness,
  ),
  boltThread: ofMachine(choiceParameter(words.boltThread, 'M8'), words.boltThread, overIt),
  boltLow: ofMachine(number(words.boltLow, 'mm', -250, 0, 500, 1), words.boltLow, overIt),
  boltHigh: ofMachine(number(words.boltHigh, 'mm', -250, 100, 500, 1), words.boltHigh, overIt),
  endRadius: number(words.endRadius, 'mm', 2, 4, 10, 0.5),
  play: number(words.play, 'mm', 0.1, 0.3, 1),
  contact: number(words.contact, 'mm', 10, 50, 300, 1),
  takeUp: ofMachine(number(words.takeUp, 'mm', 2, 20, 100, 1), words.takeUp),
  runningClearance: number(words.runningClearance, 'mm', 0.2, 0.5, 3),
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
