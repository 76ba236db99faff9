import { fail, ok, type Result } from '../../core/result.ts';
import { carriageParameters } from '../parameters.ts';
import { outside } from '../within.ts';
import { anglePerTurn, screwExtension, type Carriage } from './screw.ts';

export interface CarriageQuestion extends Carriage {
  readonly angle: number;
  readonly pitch: number;
}

export interface CarriageSums {
  /** The tip's extension square to the sole, from level, mm. */
  readonly screw: number;
  readonly turns: number;
  /** Degrees for one more turn at this angle. */
  readonly anglePerTurn: number;
}

/** Heel screw of one carriage at one angle. */
export const carriageSums = (question: CarriageQuestion): Result<CarriageSums> => {
  const issues = outside(carriageParameters, { ...question });
  if (issues.length > 0) return fail(...issues);
  const screw = screwExtension(question, question.angle);
  return ok({
    screw,
    turns: screw / question.pitch,
    anglePerTurn: anglePerTurn(question, question.angle, question.pitch),
  });
};
