import { registry } from '../../../jigs/registry.ts';
import { chain, fail, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { saveDesign } from '../../document/save.ts';
import {
  calibrateDesign,
  MAX_READINGS_BYTES,
  openReadings,
  type Calibrated,
} from '../../make/calibrate.ts';
import { text } from '../../text/index.ts';
import { printIssues, printJson, printLine, type ExitCode } from '../answer.ts';
import { loadDesign, readBytes } from '../load.ts';
import { columns } from '../print.ts';
import { writeNew } from '../write-file.ts';

const words = text.setup.command;

const find = (file: string, readingsFile: string): Result<Calibrated> =>
  chain(loadDesign(file), (design) =>
    chain(readBytes(readingsFile, MAX_READINGS_BYTES), (bytes) =>
      chain(openReadings(bytes), (readings) => calibrateDesign(design, readings, registry)),
    ),
  );

const print = ({ calibration, record }: Calibrated): void => {
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
    const issue = writeNew(out, saveDesign(answer.design));
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
