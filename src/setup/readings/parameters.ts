import { number } from '../../core/parameter.ts';
import { text } from '../../text/index.ts';
import { choiceParameter } from '../../schema/field.ts';

const words = text.setup.readings.parameters;

/** Every number and choice of a readings file, with unit, range and reason. */
export const readingsParameters = {
  scatter: choiceParameter(words.scatter, 'stated'),
  edges: choiceParameter(words.edges, 'across'),
  wished: number(words.wished, 'mm', 0.001, 0.05, 5, 0.01),
  thickness: number(words.thickness, 'mm', 0.5, 3, 25, 0.01),
  height: number(words.height, 'mm', 5, 50, 300, 0.1),
  spineRadius: number(words.spineRadius, 'mm', 0, 0, 12.5, 0.1),
  faceOffset: number(words.faceOffset, 'mm', 0, 0, 12.5, 0.01),
  edge: number(words.edge, 'mm', -2, 0.2, 25, 0.01),
  bevelHeight: number(words.bevelHeight, 'mm', 0.5, 20, 300, 0.1),
  angle: number(words.angle, 'deg', 0.1, 3.5, 45, 0.1),
  depth: number(words.depth, 'mm', 0.005, 0.3, 10, 0.01),
  limit: number(words.limit, 'mm', 0, 20, 300, 0.1),
  uncertainty: number(words.uncertainty, 'mm', 0.0005, 0.02, 5, 0.01),
} as const;
