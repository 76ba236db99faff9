import type { Consequence } from '../adapt/consequence.ts';
import type { Difference } from '../adapt/differences.ts';
import type { PartChange } from '../adapt/part-changes.ts';
import { DECIMALS, type SettingChange } from '../adapt/setting-changes.ts';
import { settingRows } from '../adapt/setting-rows.ts';
import type { CheckResult } from '../check/result.ts';
import { plain } from '../core/units.ts';
import { text } from '../text/index.ts';
import { printLine } from './answer.ts';
import { columns } from './print.ts';

const words = text.adapt;

export const printDifferences = (list: readonly Difference[]): void => {
  printLine(words.differenceTitle(list.length));
  for (const { label, from, to } of list) printLine(`  ${words.difference(label, from, to)}`);
};

/** What is set, one line a reading: "P60 left, Step to belt  4.829 -> 4.7 mm". */
const printSettingChanges = (changes: readonly SettingChange[], indent: string): void => {
  if (changes.length === 0) return printLine(`${indent}${words.settingsSame}`);
  printLine(`${indent}${words.settingsTitle}`);
  const said = (n: number | null): string | null => (n === null ? null : plain(n, DECIMALS));
  columns(
    settingRows(changes).map(({ who, label, from, to, unit, gone }) => [
      `${indent}  ${gone ? who : words.setting(who, label)}`,
      gone ? words.settingGone : words.settingValue(said(from), said(to), unit),
    ]),
  ).forEach(printLine);
};

/** Failed checks, each with what would mend it. */
export const printFailed = (failed: readonly CheckResult[]): void => {
  for (const { label, message, fix } of failed) {
    printLine(`  ${text.cli.failed}  ${label}: ${message}`);
    printLine(`        ${fix}`);
  }
};

const partLine = ({ change, name, reasons, kind }: PartChange): string => {
  const verb =
    change === 'new' || change === 'more'
      ? `${words.part[change]}, ${words.make[kind]}`
      : words.part[change];
  return words.partLine(verb, name, reasons.join('; '));
};

const printParts = ({ parts, purchases }: Consequence, indent: string): void => {
  const kept = parts.filter(({ change }) => change === 'unchanged');
  const made = parts.filter(({ change }) => change !== 'left-over').length;
  printLine(`${indent}${words.partsTitle(kept.length, made)}`);
  for (const part of parts.filter((one) => !kept.includes(one)))
    printLine(`${indent}  ${partLine(part)}`);
  // Reused under another name: that has to be told.
  for (const part of kept.filter(({ reasons }) => reasons.length > 0))
    printLine(`${indent}  ${partLine(part)}`);
  const plainly = kept.filter(({ reasons }) => reasons.length === 0).map(({ name }) => name);
  if (plainly.length > 0 && kept.length < parts.length)
    printLine(`${indent}  ${words.partsKept(plainly)}`);
  const buy = purchases.filter(({ have, need }) => need > have);
  const left = purchases.filter(({ have, need }) => have > need);
  printLine(`${indent}${buy.length === 0 ? words.buyNothing : words.buyTitle}`);
  for (const { designation, have, need } of buy)
    printLine(`${indent}  ${words.buy(need - have, designation)}`);
  if (left.length > 0)
    printLine(
      `${indent}${words.leftOver(left.map((one) => words.buy(one.have - one.need, one.designation)))}`,
    );
};

/** Settings, parts and purchases of a change. */
export const printConsequence = (change: Consequence, indent = ''): void => {
  const { settings, parts, purchases } = change;
  const isNothing =
    settings.length === 0 &&
    purchases.length === 0 &&
    parts.every((part) => part.change === 'unchanged');
  if (isNothing) return printLine(`${indent}${words.noConsequence}`);
  printSettingChanges(settings, indent);
  printParts(change, indent);
};
