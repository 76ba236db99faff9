import { chain, ok, type Result } from '../../core/result.ts';
import { plain } from '../../core/units.ts';
import { SIDES } from '../../blade/schema.ts';
import type { Design } from '../../document/schema.ts';
import { saveDesign } from '../../document/save.ts';
import { groundSheets, type GroundSheetData } from '../../drawing/ground-sheets.ts';
import { partSheets } from '../../drawing/part-sheets.ts';
import type { Sheet } from '../../drawing/sheet.ts';
import type { TitleBlock } from '../../drawing/title-block.ts';
import { DESIGN_KIND, svg, withManifest, type PackageFile } from '../../export/index.ts';
import { text } from '../../text/index.ts';
import { bladeMap, wantedHollows, type MapValue } from '../../virtual/index.ts';
import { stampFailed } from '../failed.ts';
import { utf8 } from '../files/bytes.ts';
import { checksFile } from '../files/checks.ts';
import { csv } from '../files/table.ts';
import { plateFiles } from '../files/plates.ts';
import { printFiles } from '../files/prints.ts';
import { titleBlock } from '../files/title.ts';
import { yawSentence } from './work.ts';
import { groundPlaces, type Ground, type GroundPlace } from './ground.ts';

const words = text.virtual.ground;
/** Spacing of the places in the table of the sheet and in the data file, mm. */
const SHEET_SPACING = 20;
const DATA_SPACING = 5;

const show = (value: number, digits: number): string => plain(value, digits);

const cellsOf = ({ u, thickness, standing, lines }: GroundPlace, digits: number): string[] => [
  show(u, digits === 3 ? 2 : 0),
  show(thickness, digits),
  show(standing, digits),
  ...SIDES.flatMap((side) => {
    const line = lines[side];
    if (line === undefined) return ['', '', ''];
    const { height, wanted } = line;
    return [show(height, digits), show(wanted, digits), show(height - wanted, digits)];
  }),
];

/** What the maps of a blade show, the one that tells most first. */
const SHOWN: readonly MapValue[] = ['standing', 'thickness'];

/** Settings with the strip as a table of their own, how it is stuck on, and what was checked. */
const stripTable = ({ cure, kit, work }: Ground): Pick<GroundSheetData, 'more'> => {
  if (!cure?.ok || !kit?.ok || work.tape === undefined) return {};
  const { title, columns, how, checks, failed } = words.strip;
  const [first] = cure.value.sides;
  const bad = kit.value.checks.filter(({ passed }) => !passed);
  const all = kit.value.checks.length;
  return {
    more: {
      title,
      heads: columns,
      rows: kit.value.settings.map(({ setting, setoff, turnsFromZero, division, push }) => [
        setting,
        show(setoff, 2),
        show(turnsFromZero, 2),
        String(division),
        words.strip.push(show(push.from, 1), show(push.to, 1)),
      ]),
      notes: [
        how(first?.strip.us[0] ?? 0, first?.strip.bottom ?? 0, work.tape),
        checks(all - bad.length, all),
        ...bad.map(({ label, message }) => failed(label, message)),
      ],
    },
  };
};

/** The map with the strip beside the one without, or the other way round for a rest made for it. */
const otherMap = ({ cure, work, report, straight }: Ground): GroundSheetData['maps'] => {
  if (!cure?.ok) return [];
  const { map } = text.virtual;
  const what = 'standing';
  const other = straight?.grind ?? cure.value.cured;
  return [
    {
      map: bladeMap(report.grind.shape, other.finished, what, work.job.edge),
      words: {
        ...map[what],
        line: map.line,
        title: words.strip.same(straight === undefined),
      },
    },
  ];
};

/** What the sheet of one ground blade shows; `index` counts the blades from 1. */
const groundSheetData = (ground: Ground, index: number): GroundSheetData => {
  const { blade, report, work } = ground;
  const { shape, finished } = report.grind;
  const { map } = text.virtual;
  const { certainty } = report;
  return {
    id: words.sheetId(index),
    title: words.title(blade.name),
    standing: words.estimate(certainty.kind === 'estimate' ? certainty.basis : undefined),
    maps: SHOWN.flatMap((what, i) => [
      {
        map: bladeMap(shape, finished, what, work.job.edge, wantedHollows(report.grind, work.job)),
        words: { ...map[what], line: map.line },
      },
      ...(i === 0 ? otherMap(ground) : []),
    ]),
    places: words.places,
    heads: words.columns,
    rows: groundPlaces(ground, SHEET_SPACING).map((place) => cellsOf(place, 2)),
    notes: [
      words.tip,
      ...(ground.yaw?.ok ? [yawSentence(ground.yaw.value, report)] : []),
      ...report.assumptions,
    ],
    ...stripTable(ground),
  };
};

/** The sheets of all ground blades. */
export const groundDrawings = (ground: readonly Ground[], block: TitleBlock): Sheet[] =>
  ground.flatMap((one, i) => groundSheets(groundSheetData(one, i + 1), block));

/** The places of all ground blades as comma-separated values. */
export const groundFile = (ground: readonly Ground[]): PackageFile => ({
  path: 'ground.csv',
  kind: 'ground-blade',
  bytes: csv([
    [words.blade, ...words.columns, words.counts],
    ...ground.flatMap((one) =>
      groundPlaces(one, DATA_SPACING).map((place) => [
        one.blade.name,
        ...cellsOf(place, 3),
        place.steers ? text.make.yes : text.make.no,
      ]),
    ),
  ]),
});

/** Maps and places alone, and the strips that were asked for, as a folder, with the design in every file. */
export const groundFolder = (design: Design, ground: readonly Ground[]): Result<PackageFile[]> => {
  const carry = saveDesign(design);
  const parts = ground.flatMap(({ cure, kit }) => {
    if (kit?.ok) return [...kit.value.parts];
    return cure?.ok ? cure.value.sides.map(({ part }) => part) : [];
  });
  // What serves both sides, or several blades, is told once.
  const strips = parts.filter(({ id }, i) => parts.findIndex((part) => part.id === id) === i);
  const made = chain(plateFiles(strips, design.making, carry), (plates) =>
    chain(printFiles(strips, design.making, carry), (prints) => ok([...plates, ...prints])),
  );
  if (!made.ok) return made;
  const block = titleBlock(design, carry);
  const checks = ground.flatMap(({ kit }) => (kit?.ok ? kit.value.checks : []));
  const sheets = [
    ...groundDrawings(ground, block),
    ...strips.flatMap((part) => partSheets(part, block)),
  ].map((sheet) => stampFailed(sheet, checks));
  const files = withManifest(
    [
      ...made.value,
      groundFile(ground),
      ...(checks.length > 0 ? [checksFile(checks)] : []),
      ...sheets.map((sheet) => ({
        path: `${sheet.id}.svg`,
        kind: 'drawings',
        bytes: utf8(svg(sheet, { carry })),
      })),
      { path: text.make.designFile, kind: DESIGN_KIND, bytes: utf8(carry) },
    ],
    // Nothing was checked here, and what was not checked counts as failed.
    { design: design.name, passed: false },
    carry,
  );
  return ok(files);
};
