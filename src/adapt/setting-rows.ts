import { text } from '../text/index.ts';
import type { SettingChange } from './setting-changes.ts';

/** Changes as a person reads them: one row for both sides where they are alike. */
export interface SettingRow extends Pick<SettingChange, 'label' | 'unit' | 'from' | 'to'> {
  readonly key: string;
  /** Belt, side or both, and which setting of several. */
  readonly who: string;
  /** A setting that is no longer made: without reading. */
  readonly gone: boolean;
}

const words = text.adapt;

/** The same setting: ids are numbers of steps, and those may differ before and after. */
const sameSetting = (a: SettingChange, b: SettingChange): boolean =>
  (['belt', 'side', 'nth'] as const).every((key) => a[key] === b[key]);

const alike = (a: SettingChange, b: SettingChange): boolean =>
  (['belt', 'nth', 'state', 'key', 'from', 'to'] as const).every((key) => a[key] === b[key]);

const rowOf = (change: SettingChange, both: boolean): SettingRow => {
  const { belt, side, nth, key, label, unit, from, to, state } = change;
  return {
    key: [belt, side, nth, key].join('/'),
    who: words.settingOf(belt, both ? words.bothSides : words.side[side], nth),
    label,
    unit,
    from,
    to,
    gone: state === 'gone',
  };
};

/** The rows of a table of changed settings, in the order of the changes. */
export const settingRows = (changes: readonly SettingChange[]): SettingRow[] => {
  // Of a setting that is no longer made the readings do not matter: its first row tells it.
  const told = changes.filter(
    (change, i) =>
      change.state !== 'gone' || changes.findIndex((one) => sameSetting(one, change)) === i,
  );
  const twin = (change: SettingChange): SettingChange | undefined =>
    told.find(
      (other) =>
        other.side !== change.side &&
        alike(change.state === 'gone' ? { ...change, from: other.from } : change, other),
    );
  return told
    .filter((change) => change.side === 'left' || twin(change) === undefined)
    .map((change) => rowOf(change, twin(change) !== undefined));
};
