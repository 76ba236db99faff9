import { readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
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
import { issueOf, printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign } from '../load.ts';
import { columns } from '../print.ts';

const words = text.setup.command;

/** Largest readings file that is opened: some ten times the largest that passes the schema. */
const MAX_READINGS_BYTES = 64 * 1024;

const readingsFormat = {
  mark: READINGS_FORMAT,
  noun: text.setup.readings.noun,
  version: READINGS_VERSION,
  migrations: [],
};

const whyOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : String(error);

/** Reads and checks a readings file. A file over the limit is not even read. */
const loadReadings = (file: string): Result<Readings> => {
  try {
    if (statSync(file).size > MAX_READINGS_BYTES)
      return fail(issueOf('too-large', words.tooLarge(file, MAX_READINGS_BYTES), '--readings'));
    return chain(parseJson(readFileSync(file), MAX_READINGS_BYTES), (data) =>
      chain(upgrade(data, readingsFormat), (draft) => checkFields(readingsSchema, draft)),
    );
  } catch (error) {
    return fail(issueOf('file-unreadable', words.unreadable(file, whyOf(error)), '--readings'));
  }
};

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

/** Writes a file that was not there before, whole or not at all. */
const writeNew = (file: string, content: string): Result<string> => {
  try {
    writeFileSync(file, content, { flag: 'wx' });
    return ok(file);
  } catch (error) {
    const why = whyOf(error);
    if (why === 'EEXIST') return fail(issueOf('file-exists', words.exists(file), '--out'));
    rmSync(file, { force: true });
    return fail(issueOf('unwritable', words.unwritable(file, why), '--out'));
  }
};

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
  const found = chain(find(file, readingsFile), (answer) =>
    out === undefined
      ? ok(answer)
      : chain(writeNew(out, saveDesign(remembering(answer.design, answer.record))), () =>
          ok(answer),
        ),
  );
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
