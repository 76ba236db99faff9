import type { Reading, Setting } from '../family/index.ts';
import type { Unit } from '../core/parameter.ts';
import { text } from '../text/index.ts';

/** One number that is set, before and after; null where there was or is none. */
export interface SettingChange {
  readonly setting: string;
  readonly step: number;
  readonly side: Setting['side'];
  readonly belt: string;
  readonly key: string;
  readonly label: string;
  readonly unit: Unit;
  readonly from: number | null;
  readonly to: number | null;
}

/** Closer than a maker can set, mm or degrees. */
const SAME = 1e-4;

/** What a setting is matched by: belt, side and which of several such it is. */
const keyed = (settings: readonly Setting[]): Map<string, Setting> => {
  const found = new Map<string, Setting>();
  for (const setting of settings) {
    const base = `${setting.belt}/${setting.side}`;
    let key = base;
    for (let i = 2; found.has(key); i += 1) key = `${base}/${String(i)}`;
    found.set(key, setting);
  }
  return found;
};

type Numbered = Pick<Reading, 'key' | 'label' | 'value' | 'unit'>;

/** Readings, and the edge to stop at, which is a setting of the hand. */
const readingsOf = ({ readings, edgeStop, angle }: Setting): Numbered[] => [
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
    const setting = after ?? before;
    if (setting === undefined) return [];
    const [a, b] = [before, after].map(
      (s) => new Map((s ? readingsOf(s) : []).map((r) => [r.key, r])),
    );
    return [...new Set([...(b?.keys() ?? []), ...(a?.keys() ?? [])])].flatMap(
      (name): SettingChange[] => {
        const [was, is] = [a?.get(name), b?.get(name)];
        const named = is ?? was;
        if (named === undefined) return [];
        if (was && is && Math.abs(was.value - is.value) <= SAME) return [];
        return [
          {
            setting: setting.id,
            step: setting.step,
            side: setting.side,
            belt: setting.belt,
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
