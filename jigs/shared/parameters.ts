import { choiceParameter, number, ofSheet, text, type ValuesOf } from '../../src/family/index.ts';

const words = text.family.shared.parameters;

/** Numbers and choices of base, guide, feed and push block that families take as they are. */
export const parameters = {
  guide: choiceParameter(words.guide, 'slots'),
  mount: choiceParameter(words.mount, 'pattern'),
  base: ofSheet(number(words.base, 'mm', 6, 8, 12, 0.5)),
  wing: number(words.wing, 'mm', 28, 32, 60, 1),
  guideLength: number(words.guideLength, 'mm', 35, 50, 90, 1),
  guidePlay: number(words.guidePlay, 'mm', 0.02, 0.1, 0.5, 0.01),
  runningClearance: number(words.runningClearance, 'mm', 0.2, 0.4, 3),
  plungeMargin: number(words.plungeMargin, 'mm', 0, 2.5, 8, 0.5),
  padMargin: number(words.padMargin, 'mm', 1, 2, 10, 0.5),
  handDistance: number(words.handDistance, 'mm', 40, 50, 120, 1),
} as const;

/** What base, guide, feed and push block are drawn from, mm; some have a range for each family. */
export interface Values extends ValuesOf<typeof parameters> {
  readonly plate: number;
  readonly noseGap: number;
  readonly stepWing: number;
  readonly tipOverlap: number;
  readonly travelReserve: number;
  readonly guardRise: number;
}
