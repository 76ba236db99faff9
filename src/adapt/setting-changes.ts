import type { Reading, Setting } from '../family/index.ts';
import type { Unit } from '../core/parameter.ts';
import { plain } from '../core/units.ts';
import { text } from '../text/index.ts';

/** One number that is set, before and after; null where there was or is none. */
export interface SettingChange {
  readonly setting: string;
  readonly step: number;
  readonly side: Setting['side'];
  readonly belt: string;
  /** Which it is of several settings of the same belt and side, from 1. */
  readonly nth: number;
  /** Whether the setting itself is there before and after. */
  readonly state: 'changed' | 'new' | 'gone';
  readonly key: string;
  readonly label: string;
  readonly unit: Unit;
  readonly from: number | null;
  readonly to: number | null;
}

/** Readings are told to so many decimals of mm or degrees, finer than a maker can set. */
export const DECIMALS = 3;

const same = (a: number, b: number): boolean => plain(a, DECIMALS) === plain(b, DECIMALS);

interface Numbered {
  readonly setting: Setting;
  readonly nth: number;
}

/** What a setting is matched by: belt, side and which of several such it is. */
const keyed = (settings: readonly Setting[]): Map<string, Numbered> => {
  const found = new Map<string, Numbered>();
  for (const setting of settings) {
    const keyOf = (n: number): string => `${setting.belt}/${setting.side}/${String(n)}`;
    let nth = 1;
    while (found.has(keyOf(nth))) nth += 1;
    found.set(keyOf(nth), { setting, nth });
  }
  return found;
};

type Read = Pick<Reading, 'key' | 'label' | 'value' | 'unit'>;

/** Readings, and the edge to stop at, which is a setting of the hand. */
const readingsOf = ({ readings, edgeStop, angle }: Setting): Read[] => [
  ...readings,
  { key: 'edgeStop', label: text.adapt.edgeStop, value: edgeStop, unit: 'mm' },
  { key: 'angle', label: text.adapt.angle, value: angle, unit: 'deg' },
];

/** Every reading of every belt and side that is another number than before. */
export const settingChanges = (
  from: readonly Setting[],
  to: readonly Setting[],
): SettingChange[] => {
  const [old, now] = [keyed(from), keyed(to)];
  return [...new Set([...now.keys(), ...old.keys()])].flatMap((key) => {
    const [before, after] = [old.get(key), now.get(key)];
    const known = after ?? before;
    if (known === undefined) return [];
    const { setting, nth } = known;
    const state = before === undefined ? 'new' : after === undefined ? 'gone' : 'changed';
    const [a, b] = [before, after].map(
      (one) => new Map((one ? readingsOf(one.setting) : []).map((r) => [r.key, r])),
    );
    return [...new Set([...(b?.keys() ?? []), ...(a?.keys() ?? [])])].flatMap(
      (name): SettingChange[] => {
        const [was, is] = [a?.get(name), b?.get(name)];
        const named = is ?? was;
        if (named === undefined) return [];
        if (was && is && same(was.value, is.value)) return [];
        return [
          {
            setting: setting.id,
            step: setting.step,
            side: setting.side,
            belt: setting.belt,
            nth,
            state,
            key: name,
            label: named.label,
            unit: named.unit,
            from: was?.value ?? null,
            to: is?.value ?? null,
          },
        ];
      },
    );
  });
};
