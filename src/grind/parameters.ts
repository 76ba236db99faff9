import { number } from '../core/parameter.ts';
import { text } from '../text/index.ts';
import { ANGLE } from './spine-rest/angle.ts';

const words = text.grind.calc.parameters;

/** Parameters of the quick sum on a spine rest. */
export const spineRestParameters = {
  spineThickness: number(words.spineThickness, 'mm', 0.5, 3, 25),
  edgeThickness: number(words.edgeThickness, 'mm', 0, 0.2, 25),
  height: number(words.height, 'mm', 5, 50, 300),
  spineRadius: number(words.spineRadius, 'mm', 0, 0, 12.5),
  lean: number(words.lean, 'deg', -30, 0, 30),
  angle: number(words.angle, 'deg', ANGLE.min, 3.5, ANGLE.max),
  setoff: number(words.setoff, 'mm', 0, 4.65, 400),
  bevelHeight: number(words.bevelHeight, 'mm', 0, 20, 300),
} as const;

/** Parameters of the quick sum on an edge rest. */
export const edgeRestParameters = {
  radius: number(words.radius, 'mm', 10, 150, 1000),
  centre: number(words.centre, 'mm', 0, 20, 200),
  depth: number(words.depth, 'mm', 0, 0.3, 10),
  drop: number(words.drop, 'mm', -500, 20, 500),
  faceOffset: number(words.faceOffset, 'mm', 0, 0, 12.5),
} as const;

/** Parameters of the quick sum on a carriage. */
export const carriageParameters = {
  base: number(words.base, 'mm', 20, 100, 500),
  angle: number(words.carriageAngle, 'deg', 0, 3.5, 45),
  pitch: number(words.pitch, 'mm', 0.1, 1, 10),
  footRadius: number(words.footRadius, 'mm', 0, 0, 15),
  tipRadius: number(words.tipRadius, 'mm', 0, 0, 15),
} as const;
