import { choiceParameter, number, text, type ValuesOf } from '../../src/family/index.ts';

const words = text.family.backingCarrier.parameters;

/** Every number and choice of the carrier, with unit, range and reason. */
export const parameters = {
  face: choiceParameter(words.face, 'soft'),
  place: choiceParameter(words.place, 'over'),
  softThickness: number(words.softThickness, 'mm', 2, 5, 10, 0.5),
  modulus: number(words.modulus, 'N/mm2', 2, 20, 200, 1),
  tension: number(words.tension, 'N/mm', 0.5, 3, 10, 0.1),
  push: number(words.push, 'N', 5, 40, 150, 1),
  radius: number(words.radius, 'mm', 300, 1000, 5000, 10),
  depth: number(words.depth, 'mm', 12, 18, 40, 0.5),
  plate: number(words.plate, 'mm', 4, 6, 10, 0.5),
  cheek: number(words.cheek, 'mm', 4, 6, 8, 0.5),
  platenThickness: number(words.platenThickness, 'mm', 6, 8, 25, 0.5),
  boltThread: choiceParameter(words.boltThread, 'M8'),
  boltLow: number(words.boltLow, 'mm', -250, 0, 500, 1),
  boltHigh: number(words.boltHigh, 'mm', -250, 100, 500, 1),
  endRadius: number(words.endRadius, 'mm', 2, 4, 10, 0.5),
  play: number(words.play, 'mm', 0.1, 0.3, 1),
  contact: number(words.contact, 'mm', 10, 50, 300, 1),
  takeUp: number(words.takeUp, 'mm', 2, 20, 100, 1),
  runningClearance: number(words.runningClearance, 'mm', 0.2, 0.5, 3),
} as const;

/** The parameters with the values of one design. */
export type Values = ValuesOf<typeof parameters>;
