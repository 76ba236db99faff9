import type { CheckResult } from '../check/result.ts';
import { plain } from '../core/units.ts';
import type { Setting } from '../family/index.ts';
import { text } from '../text/index.ts';
import { printLine } from './answer.ts';

export const columns = (rows: readonly (readonly string[])[]): string[] => {
  const widths = (rows[0] ?? []).map((_, i) =>
    Math.max(...rows.map((row) => (row[i] ?? '').length)),
  );
  return rows.map((row) =>
    row
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
};

/** The reading that is dialled, with the way from the setting before. */
const mainReading = ({ readings }: Setting): string[] => {
  const [main] = readings;
  if (!main) return [''];
  const turns = main.dial ? text.cli.turns(plain(main.dial.turnsFromLast, 2)) : '';
  return [`${main.label} ${plain(main.value, 3)} ${main.unit}`, turns];
};

/** The settings as a table, one line a belt and side. */
export const printSettings = (settings: readonly Setting[]): void => {
  printLine(text.cli.settingsTitle);
  const rows = settings.map((setting) => [
    `  ${setting.step}`,
    setting.belt,
    setting.side,
    ...mainReading(setting),
    `${plain(setting.angle, 2)} deg`,
    text.cli.stop(plain(setting.hollow?.stop ?? setting.edgeStop, 2)),
  ]);
  columns(rows).forEach(printLine);
};

const limits = (check: CheckResult): string => {
  const unit = check.unit === 'ratio' ? '' : ` ${check.unit}`;
  const parts = [
    check.found === null ? text.cli.notComputed : `${plain(check.found, 3)}${unit}`,
    check.atLeast === undefined ? '' : text.cli.atLeast(`${plain(check.atLeast, 3)}${unit}`),
    check.atMost === undefined ? '' : text.cli.atMost(`${plain(check.atMost, 3)}${unit}`),
  ];
  return parts.filter(Boolean).join(', ');
};

/** The checks: all of them, or the failed ones alone, then the count. */
export const printChecks = (checks: readonly CheckResult[], everyOne: boolean): void => {
  const passed = checks.filter((check) => check.passed).length;
  printLine(text.cli.checksTitle(passed, checks.length));
  for (const check of checks) {
    if (check.passed && !everyOne) continue;
    printLine(
      `  ${check.passed ? text.cli.passed : text.cli.failed}  ${check.label}: ${limits(check)}`,
    );
    if (!check.passed) printLine(`        ${check.message} ${check.fix}`);
  }
};
