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

/** The places that every setting of the first blade is compared at. */
const placesOf = (setting: Setting | undefined): Setting['expected'] => {
  const blade = setting?.expected[0]?.blade;
  return setting?.expected.filter((entry) => entry.blade === blade) ?? [];
};

const rowOf = (setting: Setting): SettingRow => {
  const [main] = setting.readings;
  return {
    belt: `${setting.belt} ${setting.backing}`,
    side: text.make.side[setting.side],
    stopAt: setting.edgeStop,
    values: setting.readings.map((reading) => reading.value),
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

const progressOf = (setting: Setting): Progress => ({
  title: words.progressTitle(setting.step, setting.belt, text.make.side[setting.side]),
  rows: setting.progress.map(({ edge, angle, bevelHeight }) => ({
    edge,
    angle,
    bevel: bevelHeight,
  })),
  perTenth: perTenth(setting.progress),
});

const checkFact = (check: CheckResult): Fact => ({
  name: check.label,
  value: words.check(
    check.passed,
    check.found === null ? null : plain(check.found, 2),
    check.unit === 'ratio' ? '' : check.unit,
  ),
});

/** What the set-up sheet of a fixture tells. */
export const setupData = (
  design: Design,
  fixture: Fixture,
  checks: readonly CheckResult[],
  family: string,
): SetupData => ({
  title: family,
  facts: [
    { name: words.grinder, value: design.grinder.name },
    { name: words.blades, value: design.blades.map((blade) => blade.name).join(', ') },
    ...fixture.facts.map((fact) => ({
      name: fact.label,
      value:
        `${plain(fact.value, 3)} ${fact.unit === 'ratio' || fact.unit === 'count' ? '' : fact.unit}`.trim(),
    })),
  ],
  settings: {
    names: (fixture.settings[0]?.readings ?? []).map(
      (reading) => `${reading.label}, ${reading.unit}`,
    ),
    places: placesOf(fixture.settings[0]).map((entry) =>
      words.place(text.make.place[entry.place], plain(entry.u, 0)),
    ),
    rows: fixture.settings.map((setting) => rowOf(setting)),
  },
  progress: fixture.settings.map(progressOf),
  zeroing: fixture.zeroing,
  measure: words.measure,
  cautions: fixture.cautions,
  checks: checks.map(checkFact),
});
