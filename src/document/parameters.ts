import { bladeParameters } from '../blade/parameters.ts';
import { number } from '../core/parameter.ts';
import { choiceParameter } from '../schema/field.ts';
import { text } from '../text/index.ts';

const words = text.document.parameters;
const leastEdge = bladeParameters.edge.wanted.min;
const mostEdge = bladeParameters.edge.asHeatTreated.max;

/** Every number and choice of a design outside blade, grinder and fixture family. */
export const designParameters = {
  revision: number(words.revision, 'count', 1, 1, 9999),
  making: {
    units: choiceParameter(words.making.units, 'mm'),
    plates: {
      process: choiceParameter(words.making.process, 'laser'),
      material: choiceParameter(words.making.material, 'steel'),
      thickness: number(words.making.thickness, 'mm', 1, 6, 25, 0.5),
      kerf: number(words.making.kerf, 'mm', 0, 0, 3, 0.05),
    },
    prints: {
      material: choiceParameter(words.making.filament, 'PETG'),
      fit: choiceParameter(words.making.fit, 'clearance'),
      nozzle: number(words.making.nozzle, 'mm', 0.2, 0.4, 1.2, 0.1),
      layer: number(words.making.layer, 'mm', 0.05, 0.2, 0.8, 0.05),
    },
  },
  calibration: {
    offset: number(words.fixture.calibration.offset, 'mm', -5, 0, 5, 0.01),
    uncertainty: number(words.fixture.calibration.uncertainty, 'mm', 0, 0, 5, 0.01),
  },
  sequence: {
    edge: number(words.sequence.edge, 'mm', leastEdge, 0.2, mostEdge, 0.05),
    steeper: number(words.sequence.steeper, 'deg', 0, 0, 10, 0.1),
    depthLeft: number(words.sequence.depthLeft, 'mm', 0, 0, 3, 0.01),
  },
} as const;
