import type { CheckResult } from '../check/result.ts';
import { inches, plain } from '../core/units.ts';
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

/** A number with all its decimals, so that those of a column stand under each other. */
const even = (value: number, decimals: number): string => {
  const told = value.toFixed(decimals);
  return Number(told) === 0 ? (0).toFixed(decimals) : told;
};

/** A length or an angle with its unit; a length in inches too, where they are wanted. */
const inUnits = (value: number, decimals: number, unit: string, wanted: boolean): string => {
  const shown = `${even(value, decimals)} ${unit}`;
  return wanted && unit === 'mm' ? text.drawing.inBoth(shown, inches(value, 2)) : shown;
};

/** The reading that is dialled, with the way from the setting before. */
const mainReading = ({ readings }: Setting, wanted: boolean): string[] => {
  const [main] = readings;
  if (!main) return [''];
  const turns = main.dial ? text.cli.turns(even(main.dial.turnsFromLast, 2)) : '';
  return [`${main.label} ${inUnits(main.value, 3, main.unit, wanted)}`, turns];
};

/** Further readings by which a setting differs from others of the same pass and side: a blade clamped anew. */
const apart = (setting: Setting, settings: readonly Setting[], wanted: boolean): string => {
  const { step, side, readings } = setting;
  const like = settings.filter((one) => one.step === step && one.side === side);
  return readings
    .slice(1)
    .filter(({ key, value }) =>
      like.some((one) => one.readings.some((own) => own.key === key && own.value !== value)),
    )
    .map(({ label, value, unit }) => `${label} ${inUnits(value, 2, unit, wanted)}`)
    .join(', ');
};

/** The settings as a table, one line a belt, side and clamping; lengths in inches too if `wanted`. */
export const printSettings = (settings: readonly Setting[], wanted: boolean): void => {
  printLine(text.cli.settingsTitle);
  const rows = settings.map((setting) => [
    `  ${setting.step}`,
    setting.belt,
    setting.side,
    ...mainReading(setting, wanted),
    `${even(setting.angle, 2)} deg`,
    text.cli.stop(inUnits(setting.hollow?.stop ?? setting.edgeStop, 2, 'mm', wanted)),
    apart(setting, settings, wanted),
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
