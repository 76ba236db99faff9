import type { CheckResult } from '../check/result.ts';
import { inches as inchesOf, plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import { usesInches } from '../document/uses-inches.ts';
import { lengthsInBoth } from '../drawing/in-both.ts';
import type { BudgetRow, Fact, Progress, SettingRow, SetupData } from '../drawing/setup-data.ts';
import type { Fixture, Reading, Setting } from '../family/index.ts';
import { scratchDepth } from '../grind/spine-rest/scratch.ts';
import { beltSpeed } from '../grinder/belt-speed.ts';
import { text } from '../text/index.ts';
import { bladeRows, placeText, progressBlade } from './setup-blades.ts';
import { placesOf, setupPictures } from './setup-pictures.ts';

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

const withUnit = (value: number, unit: string, decimals = 3): string =>
  `${plain(value, decimals)} ${unit === 'ratio' || unit === 'count' ? '' : unit}`.trimEnd();

/** Keys of readings in the tables: of those that are set, and of those that follow from them. */
interface Keys {
  readonly set: ReadonlySet<string>;
  readonly derived: ReadonlySet<string>;
}

/** Names of the places at which a blade is compared. */
const namesOfPlaces = (setting: Setting | undefined, blade: string): string[] =>
  placesOf(setting, blade).map(({ place, u }) => words.place(text.make.place[place], placeText(u)));

/** What is expected of a blade at its places, mm. */
const bevelsOf = (setting: Setting, blade: string): number[] =>
  placesOf(setting, blade).map(({ bevelHeight }) => bevelHeight);

const rowOf = (setting: Setting, blade: string, keys: Keys): SettingRow => {
  const [main] = setting.readings;
  const values = (of: ReadonlySet<string>): number[] =>
    setting.readings.filter(({ key }) => of.has(key)).map(({ value }) => value);
  return {
    belt: `${setting.belt} ${setting.backing}`,
    side: text.make.side[setting.side],
    stopAt: setting.hollow?.stop ?? setting.edgeStop,
    values: values(keys.set),
    derived: values(keys.derived),
    turns: turnsText(main?.dial?.turnsFromLast),
    reading: main ? dialText(main) : '',
    bevels: bevelsOf(setting, blade),
    volume: setting.volume[0]?.value ?? 0,
  };
};

/** Bevel height gained for a tenth less at the edge, at the end of the progress table. */
const perTenth = (progress: Setting['progress']): number => {
  const [before, last] = progress.slice(-2);
  if (!before || !last || before.edge === last.edge) return 0;
  return ((last.bevelHeight - before.bevelHeight) / (before.edge - last.edge)) * 0.1;
};

const progressOf = (setting: Setting, i: number): Progress => {
  const { progressAt, belt, side } = setting;
  const at = progressAt === undefined ? null : placeText(progressAt);
  const title = words.progressTitle(i + 1, belt, text.make.side[side], at);
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

/** Settings that are simulated for the sheet, and the seed: the same design gives the same sheet. */
const SIMULATING = { draws: 1000, seed: 1 } as const;
/** How many contributors are named. */
const NAMED = 3;

/** Numbers of passes as a person writes them: "1–3, 5". */
const numbersOf = (passes: readonly number[]): string =>
  passes
    .flatMap((n, i) => {
      const [before, after] = [passes[i - 1] === n - 1, passes[i + 1] === n + 1];
      return before && after ? [] : [`${before ? words.upTo : ''}${String(n)}`];
    })
    .join(', ')
    .replaceAll(`, ${words.upTo}`, words.upTo);

/** The notes of all settings, equal ones once, with the passes that they belong to. */
const notesOf = (settings: readonly Setting[]): string[] => {
  const passes = new Map<string, number[]>();
  settings.forEach(({ notes }, i) => {
    for (const note of notes) passes.set(note, [...(passes.get(note) ?? []), i + 1]);
  });
  return [...passes].map(([note, numbers]) =>
    words.forPasses(numbers.length === settings.length ? null : numbersOf(numbers), note),
  );
};

/** The tolerance budget of the last settings, an output a row. */
const budgetRows = ({ budget }: Fixture): BudgetRow[] => {
  const drawn = budget?.(SIMULATING);
  if (!drawn?.ok) return [];
  return drawn.value.outputs.map((output): BudgetRow => {
    const { label, unit } = text.setup.budgetCommand.outputs[output.key];
    const show = (value: number): string => `${plain(value, 2)} ${unit}`;
    return {
      what: label,
      spread: `± ${show(output.rootSumSquare)}`,
      worst: words.fromTo(show(output.worst.low), show(output.worst.high)),
      most: output.effects
        .slice(0, NAMED)
        .map((effect) => words.share(effect.label, plain(100 * effect.share, 0)))
        .join('; '),
      halved: `± ${show(output.dominant.halved.rootSumSquare)}`,
    };
  });
};

/** Belts and blades: speed against the ratings, scratches, and the skin that has to come off. */
const workFacts = ({ grinder, sequence, blades }: Design): Fact[] => {
  const { beltRating, wheelRating } = grinder.drive;
  const used = grinder.belts.filter(({ id }) => sequence.some(({ belt }) => belt === id));
  return [
    {
      name: words.speed,
      value: words.rated(plain(beltSpeed(grinder), 1), plain(beltRating), plain(wheelRating)),
    },
    ...used.flatMap(({ id, grit }) =>
      grit === undefined
        ? []
        : [{ name: words.scratch(id), value: withUnit(scratchDepth(grit), 'mm') }],
    ),
    ...blades.map(({ name, edge }) => ({
      name: words.skin(name),
      value: withUnit((edge.asHeatTreated - edge.wanted) / 2, 'mm'),
    })),
  ];
};

/** What the set-up sheet of a fixture tells. */
export const setupData = (
  design: Design,
  fixture: Fixture,
  checks: readonly CheckResult[],
  family: string,
): SetupData => {
  const { settings, facts, zeroing, cautions, sheet } = fixture;
  const first = settings[0]?.readings ?? [];
  const derived = new Set(fixture.derived);
  const changed = changing(settings);
  const keys: Keys = {
    set: new Set([...changed].filter((key) => !derived.has(key))),
    derived,
  };
  const { letters, section, blades } = setupPictures(design, fixture);
  const blade = settings[0]?.expected[0]?.blade ?? '';
  const named = ({ key, label }: Reading): string => {
    const letter = letters.get(key);
    return letter === undefined ? label : words.lettered(letter, label);
  };
  const progressBladeTold = progressBlade(design, settings);
  const terms = sheet ?? text.family.shared.bevelSheet;
  const inches = usesInches(design);
  const told = (reading: Reading): string => {
    const shown = withUnit(reading.value, reading.unit, 2);
    const both = inches && reading.unit === 'mm';
    return both ? text.drawing.inBoth(shown, inchesOf(reading.value, 2)) : shown;
  };
  const namesOf = (of: ReadonlySet<string>): string[] =>
    first.filter(({ key }) => of.has(key)).map((reading) => `${named(reading)} (${reading.unit})`);
  return {
    title: family,
    once: [
      { name: words.grinder, value: design.grinder.name },
      { name: words.blades, value: design.blades.map((blade) => blade.name).join(', ') },
      ...first
        .filter(({ key }) => !changed.has(key) && !derived.has(key))
        .map((reading) => ({
          name: named(reading),
          value: told(reading),
        })),
    ],
    pictures: { section, ...(blades[0] ? { blade: blades[0] } : {}) },
    others: design.blades.slice(1).flatMap(({ name }, i) => {
      const picture = blades[i + 1];
      const places = namesOfPlaces(settings[0], name);
      const bevels = settings.map((setting) => bevelsOf(setting, name));
      return picture && places.length > 0 ? [{ blade: name, picture, places, bevels }] : [];
    }),
    facts: [
      ...workFacts(design),
      ...facts.map(({ label, value, unit }) => ({ name: label, value: withUnit(value, unit) })),
      ...(fixture.virtual ? [text.virtual.ground.onSheet] : []),
    ],
    settings: {
      names: namesOf(keys.set),
      lengths: first.filter(({ key }) => keys.set.has(key)).map(({ unit }) => unit === 'mm'),
      derived: namesOf(keys.derived),
      blade,
      places: namesOfPlaces(settings[0], blade),
      rows: settings.map((setting) => rowOf(setting, blade, keys)),
    },
    inches,
    notes: notesOf(settings),
    bladeRows: bladeRows(design, settings),
    ...(progressBladeTold === undefined ? {} : { progressBlade: progressBladeTold }),
    progress: settings.map(progressOf),
    zeroing: inches ? zeroing.map(lengthsInBoth) : zeroing,
    measure: sheet?.measure ?? words.measure,
    terms,
    cautions,
    budget: budgetRows(fixture),
    checks: checkFacts(checks),
  };
};
