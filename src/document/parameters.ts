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
      inches: choiceParameter(words.making.inches, 'no'),
      nest: {
        sheets: choiceParameter(words.making.nest.sheets, 'no'),
        width: number(words.making.nest.width, 'mm', 100, 1000, 4000, 10),
        height: number(words.making.nest.height, 'mm', 100, 500, 4000, 10),
        gap: number(words.making.nest.gap, 'mm', 0.5, 5, 50, 0.5),
        margin: number(words.making.nest.margin, 'mm', 0, 10, 100, 1),
      },
    },
    prints: {
      material: choiceParameter(words.making.filament, 'PETG'),
      fit: choiceParameter(words.making.fit, 'clearance'),
      // Common practice, no source: guides give 0.3 to 0.5 mm on the diameter for loose and 0.2
      // for sliding fits; the fit coupon tells what a printer really needs.
      play: {
        clearance: number(words.making.play.clearance, 'mm', 0, 0.4, 1.5, 0.05),
        close: number(words.making.play.close, 'mm', -0.3, 0.2, 1, 0.05),
        press: number(words.making.play.press, 'mm', -0.5, 0, 0.5, 0.05),
      },
      nozzle: number(words.making.nozzle, 'mm', 0.2, 0.4, 1.2, 0.1),
      layer: number(words.making.layer, 'mm', 0.05, 0.2, 0.8, 0.05),
      bed: {
        width: number(words.making.bed.width, 'mm', 80, 220, 1000, 5),
        depth: number(words.making.bed.depth, 'mm', 80, 220, 1000, 5),
        height: number(words.making.bed.height, 'mm', 50, 220, 1000, 5),
      },
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
