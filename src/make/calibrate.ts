import { problem } from '../core/issue.ts';
import { chain, fail, ok, type Result } from '../core/result.ts';
import { parseJson } from '../document/json.ts';
import type { Design } from '../document/schema.ts';
import { upgrade } from '../document/version.ts';
import type { Registry } from '../family/family.ts';
import { checkFields } from '../schema/check.ts';
import { calibrate, type Calibration } from '../setup/calibration/calibrate.ts';
import { updatedRecord, type CalibrationRecord } from '../setup/calibration/correct.ts';
import { READINGS_FORMAT, READINGS_VERSION } from '../setup/readings/format.ts';
import { readingsSchema, type Readings } from '../setup/readings/schema.ts';
import { text } from '../text/index.ts';
import { solveDesign } from './engine.ts';

/** Largest readings file that is opened: some ten times the largest that passes the schema. */
export const MAX_READINGS_BYTES = 64 * 1024;

const readingsFormat = {
  mark: READINGS_FORMAT,
  noun: text.setup.readings.noun,
  version: READINGS_VERSION,
  migrations: [],
};

/** Checks the fields of readings that were entered. */
export const checkReadings = (data: unknown): Result<Readings> =>
  chain(upgrade(data, readingsFormat), (draft) => checkFields(readingsSchema, draft));

/** Reads and checks the bytes of a readings file. */
export const openReadings = (bytes: Uint8Array): Result<Readings> =>
  chain(parseJson(bytes, MAX_READINGS_BYTES), checkReadings);

export interface Calibrated {
  readonly calibration: Calibration;
  readonly record: CalibrationRecord;
  /** The design that remembers it: a new issue of it, since its dial readings change. */
  readonly design: Design;
}

const remembering = (design: Design, calibration: CalibrationRecord): Design => ({
  ...design,
  revision: Math.min(design.revision + 1, 9999),
  fixture: { ...design.fixture, calibration },
});

/** The true offset of a design's fixture from the readings of a test piece ground on it. */
export const calibrateDesign = (
  design: Design,
  readings: Readings,
  registry: Registry,
): Result<Calibrated> =>
  chain(solveDesign(design, registry), ({ known }) => {
    const before = design.fixture.calibration;
    if (known === undefined) {
      const why = text.setup.calibration.notKnown(design.fixture.family);
      return fail(problem('not-calibrated', 'fixture.family', why));
    }
    return chain(calibrate(known, readings, before?.offset), (calibration) => {
      const record = updatedRecord(before, calibration, readings.note);
      return ok({ calibration, record, design: remembering(design, record) });
    });
  });
