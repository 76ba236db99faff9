import type { CheckResult } from '../check/result.ts';
import { plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { Fact, Progress, SettingRow, SetupData } from '../drawing/setup-data.ts';
import type { Fixture, Reading, Setting } from '../family/index.ts';
import { text } from '../text/index.ts';

const words = text.make.setup;

/** Divisions of the knob that every fixture here carries. */
const DIVISIONS = 50;

/** Whole turns and divisions, and which way; empty where nothing is turned. */
const turnsText = (turns: number | undefined): string => {
  if (turns === undefined) return '';
  const steps = Math.round(Math.abs(turns) * DIVISIONS);
  if (steps === 0) return words.unmoved;
  const way = turns < 0 ? words.closer : words.wider;
  return words.turns(Math.floor(steps / DIVISIONS), steps % DIVISIONS, way);
};

const dialText = ({ dial }: Reading): string =>
  dial ? words.dial(turnsText(dial.turnsFromZero), dial.division) : '';

/** Keys of the readings that differ from belt to belt; the others are set once. */
const changing = (settings: readonly Setting[]): ReadonlySet<string> => {
  const [first] = settings;
  const differs = ({ key, value }: Reading): boolean =>
    settings.some((setting) => setting.readings.some((r) => r.key === key && r.value !== value));
  return new Set((first?.readings ?? []).filter((r, i) => i === 0 || differs(r)).map((r) => r.key));
};

const withUnit = (value: number, unit: string): string =>
  `${plain(value, 3)} ${unit === 'ratio' || unit === 'count' ? '' : unit}`.trimEnd();

/** The places that every setting of the first blade is compared at. */
const placesOf = (setting: Setting | undefined): Setting['expected'] => {
  const blade = setting?.expected[0]?.blade;
  return setting?.expected.filter((entry) => entry.blade === blade) ?? [];
};

const rowOf = (setting: Setting, keys: ReadonlySet<string>): SettingRow => {
  const [main] = setting.readings;
  return {
    belt: `${setting.belt} ${setting.backing}`,
    side: text.make.side[setting.side],
    stopAt: setting.hollow?.stop ?? setting.edgeStop,
    values: setting.readings.filter(({ key }) => keys.has(key)).map(({ value }) => value),
    turns: turnsText(main?.dial?.turnsFromLast),
    reading: main ? dialText(main) : '',
    bevels: placesOf(setting).map((entry) => entry.bevelHeight),
  };
};

/** Bevel height gained for a tenth less at the edge, at the end of the progress table. */
const perTenth = (progress: Setting['progress']): number => {
  const [before, last] = progress.slice(-2);
  if (!before || !last || before.edge === last.edge) return 0;
  return ((last.bevelHeight - before.bevelHeight) / (before.edge - last.edge)) * 0.1;
};

const progressOf = (setting: Setting): Progress => {
  const title = words.progressTitle(setting.step, setting.belt, text.make.side[setting.side]);
  if (setting.hollow === undefined)
    return {
      title,
      rows: setting.progress.map(({ edge, angle, bevelHeight }) => [edge, angle, bevelHeight]),
      perTenth: perTenth(setting.progress),
    };
  const { progress } = setting.hollow;
  const [before, last] = progress.slice(-2);
  return {
    title,
    rows: progress.map(({ depth, lower, upper }) => [depth, lower, upper]),
    perTenth:
      before && last && last.depth > before.depth
        ? (0.1 * (last.upper - before.upper)) / (last.depth - before.depth)
        : 0,
  };
};

/** How many checks passed, and each that did not: the whole list is a file of its own. */
const checkFacts = (checks: readonly CheckResult[]): Fact[] => {
  const failed = checks.filter((check) => !check.passed);
  return [
    { name: words.passed, value: words.passedOf(checks.length - failed.length, checks.length) },
    ...failed.map((check) => ({
      name: check.label,
      value: words.failed(check.found === null ? null : withUnit(check.found, check.unit)),
    })),
  ];
};

/** What the set-up sheet of a fixture tells. */
export const setupData = (
  design: Design,
  { settings, facts, zeroing, cautions, sheet }: Fixture,
  checks: readonly CheckResult[],
  family: string,
): SetupData => {
  const keys = changing(settings);
  const first = settings[0]?.readings ?? [];
  return {
    title: family,
    facts: [
      { name: words.grinder, value: design.grinder.name },
      { name: words.blades, value: design.blades.map((blade) => blade.name).join(', ') },
      ...first
        .filter(({ key }) => !keys.has(key))
        .map(({ label, value, unit }) => ({ name: label, value: withUnit(value, unit) })),
      ...facts.map(({ label, value, unit }) => ({ name: label, value: withUnit(value, unit) })),
    ],
    settings: {
      names: first.filter(({ key }) => keys.has(key)).map(({ label, unit }) => `${label}, ${unit}`),
      places: placesOf(settings[0]).map(({ place, u }) =>
        words.place(text.make.place[place], plain(u, 0)),
      ),
      rows: settings.map((setting) => rowOf(setting, keys)),
    },
    progress: settings.map(progressOf),
    zeroing,
    measure: sheet?.measure ?? words.measure,
    ...(sheet ? { terms: sheet } : {}),
    cautions,
    checks: checkFacts(checks),
  };
};
