import type { Consequence } from '../adapt/consequence.ts';
import type { Difference } from '../adapt/differences.ts';
import type { PartChange } from '../adapt/part-changes.ts';
import type { SettingChange } from '../adapt/setting-changes.ts';
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
  printLine(`${indent}${words.settingsTitle(changes.length)}`);
  const value = (n: number | null): string => (n === null ? words.absent : plain(n, 3));
  columns(
    changes.map(({ belt, side, label, from, to, unit }) => [
      `${indent}  ${words.setting(belt, words.side[side], label)}`,
      `${value(from)} -> ${value(to)} ${unit}`,
    ]),
  ).forEach(printLine);
};

const partLine = ({ change, name, reasons, kind }: PartChange): string => {
  const verb =
    change === 'new' || change === 'more'
      ? `${words.part[change]}, ${words.make[kind]}`
      : words.part[change];
  return words.partLine(verb, name, reasons.join('; '));
};

const printParts = ({ parts, purchases }: Consequence, indent: string): void => {
  const kept = parts.filter(({ change }) => change === 'unchanged').length;
  const made = parts.filter(({ change }) => change !== 'left-over').length;
  printLine(`${indent}${words.partsTitle(kept, made)}`);
  for (const part of parts) printLine(`${indent}  ${partLine(part)}`);
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
