import { registry } from '../../../jigs/registry.ts';
import { problem } from '../../core/issue.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { parseJson } from '../../document/json.ts';
import { saveDesign } from '../../document/save.ts';
import type { Design } from '../../document/schema.ts';
import { upgrade } from '../../document/version.ts';
import { solveDesign } from '../../make/engine.ts';
import { checkFields } from '../../schema/check.ts';
import { calibrate, type Calibration } from '../../setup/calibration/calibrate.ts';
import { updatedRecord, type CalibrationRecord } from '../../setup/calibration/correct.ts';
import {
  READINGS_FORMAT,
  READINGS_VERSION,
  readingsSchema,
  type Readings,
} from '../../setup/readings/schema.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign, readBytes } from '../load.ts';
import { columns } from '../print.ts';
import { writeNew } from '../write-file.ts';

const words = text.setup.command;

/** Largest readings file that is opened: some ten times the largest that passes the schema. */
const MAX_READINGS_BYTES = 64 * 1024;

const readingsFormat = {
  mark: READINGS_FORMAT,
  noun: text.setup.readings.noun,
  version: READINGS_VERSION,
  migrations: [],
};

/** Reads and checks a readings file. */
const loadReadings = (file: string): Result<Readings> =>
  chain(readBytes(file, MAX_READINGS_BYTES), (bytes) =>
    chain(parseJson(bytes, MAX_READINGS_BYTES), (data) =>
      chain(upgrade(data, readingsFormat), (draft) => checkFields(readingsSchema, draft)),
    ),
  );

/** The design that remembers a calibration: a new issue of it, since its dial readings change. */
const remembering = (design: Design, calibration: CalibrationRecord): Design => ({
  ...design,
  revision: Math.min(design.revision + 1, 9999),
  fixture: { ...design.fixture, calibration },
});

interface Found {
  readonly design: Design;
  readonly calibration: Calibration;
  readonly record: CalibrationRecord;
}

const find = (file: string, readingsFile: string): Result<Found> =>
  chain(loadDesign(file), (design) =>
    chain(loadReadings(readingsFile), (readings) =>
      chain(solveDesign(design, registry), ({ known }) => {
        const before = design.fixture.calibration;
        if (known === undefined)
          return fail(
            problem(
              'not-calibrated',
              'fixture.family',
              text.setup.calibration.notKnown(design.fixture.family),
            ),
          );
        return chain(calibrate(known, readings, before?.offset), (calibration) =>
          ok({ design, calibration, record: updatedRecord(before, calibration, readings.note) }),
        );
      }),
    ),
  );

const print = ({ calibration, record }: Found): void => {
  const { setting, unit, offset, uncertainty, interval, agreement, advice, corrected } =
    calibration;
  const show = (value: number): string => `${plain(value, 3)} ${unit}`;
  printLine(words.offset(setting, show(offset), advice.significant));
  printLine(
    words.interval(show(interval.low), show(interval.high), show(uncertainty), calibration.method),
  );
  printLine(words.agreement(agreement));
  printLine(words.dialTitle(show(record.offset)));
  columns(
    corrected.map(({ id, turnsFromZero, division }) => [
      `  ${id}`,
      words.turns(plain(turnsFromZero, 3)),
      words.division(division),
    ]),
  ).forEach(printLine);
  printLine(words.advice[advice.verdict](show(advice.now), show(advice.wished)));
  printLine(words.expected(show(advice.afterOneMore), show(advice.floor)));
};

/**
 * Calibrates a design from a readings file and prints offset, interval, corrected dial readings
 * and advice; with `out`, writes the design that remembers the offset. Ends with 0 or 2.
 */
export const calibrateFile = (
  file: string,
  readingsFile: string,
  out: string | undefined,
  json: boolean,
): ExitCode => {
  const found = chain(find(file, readingsFile), (answer) => {
    if (out === undefined) return ok(answer);
    const issue = writeNew(out, saveDesign(remembering(answer.design, answer.record)));
    return issue ? fail(issue) : ok(answer);
  });
  if (!found.ok) {
    printIssues(found.issues, json);
    return 2;
  }
  const { design, calibration, record } = found.value;
  if (json)
    printJson({
      format: 'platenwright-calibration',
      design: design.name,
      ...calibration,
      record,
      issues: found.issues,
    });
  else {
    printIssues(found.issues, false);
    print(found.value);
    if (out !== undefined) printLine(words.written(out));
  }
  return 0;
};
