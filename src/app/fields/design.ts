import type { Parameter } from '../../core/parameter.ts';
import { designParameters as p } from '../../document/parameters.ts';
import type { Design } from '../../document/schema.ts';
import { choiceParameter } from '../../schema/field.ts';
import { text } from '../../text/index.ts';
import type { FamilyCard } from '../../family/family.ts';
import { choosing, numeric, type Field, type FieldGroup } from './field.ts';

const words = text.document.parameters;
const titles = text.app.fixture.groups;

const parameterField = (path: string, parameter: Parameter, { making }: Design): Field => {
  if (parameter.kind === 'choice') return choosing(path, parameter);
  const { min, max, sheet } = parameter;
  if (!sheet) return { kind: 'number', path, parameter, slider: true };
  const stops = making.plates.thicknesses.filter((t) => t >= min && t <= max);
  return {
    kind: 'number',
    path,
    parameter,
    slider: stops.length > 1,
    stops: [...new Set(stops)].sort((a, b) => a - b),
  };
};

/** The usual values of a family's parameters. */
export const initialParameters = (family: FamilyCard): Record<string, number | string> =>
  Object.fromEntries(
    Object.entries(family.parameters).map(([key, parameter]) => [key, parameter.initial]),
  );

const idsOf = (list: readonly { readonly id: string }[]): Record<string, string> =>
  Object.fromEntries(list.map(({ id }) => [id, id]));

const sequence = (design: Design): Field => {
  const { belts, backings } = design.grinder;
  const belt = choiceParameter({ ...words.sequence.belt, options: idsOf(belts) }, '');
  const backing = choiceParameter({ ...words.sequence.backing, options: idsOf(backings) }, '');
  const hollow = design.blades.some(({ bevels }) =>
    Object.values(bevels).some(({ kind }) => kind === 'hollow'),
  );
  return {
    kind: 'list',
    path: 'sequence',
    words: words.sequence,
    items: design.sequence.map((_, i) => [
      choosing(`sequence.${i}.belt`, belt),
      choosing(`sequence.${i}.backing`, backing),
      numeric(`sequence.${i}.edge`, p.sequence.edge),
      numeric(`sequence.${i}.steeper`, p.sequence.steeper),
      // Only a hollow is stopped at a depth.
      ...(hollow ? [numeric(`sequence.${i}.depthLeft`, p.sequence.depthLeft)] : []),
    ]),
    least: 1,
    most: 12,
    fresh: () => design.sequence.at(-1),
  };
};

const thicknesses = (design: Design): Field => ({
  kind: 'list',
  path: 'making.plates.thicknesses',
  words: words.making.thicknesses,
  items: design.making.plates.thicknesses.map((_, i) => [
    numeric(`making.plates.thicknesses.${i}`, p.making.plates.thickness),
  ]),
  least: 1,
  most: 10,
  fresh: () => p.making.plates.thickness.initial,
});

const nest = (design: Design): Field[] => {
  const { sheets, width, height, gap, margin } = p.making.plates.nest;
  return [
    choosing('making.plates.nest.sheets', sheets),
    // The sheet matters only where something is laid out on it.
    ...(design.making.plates.nest.sheets === 'beside'
      ? [
          numeric('making.plates.nest.width', width),
          numeric('making.plates.nest.height', height),
          numeric('making.plates.nest.gap', gap),
          numeric('making.plates.nest.margin', margin),
        ]
      : []),
  ];
};

/** The fields of fixture, sequence and making, by heading. */
export const fixtureFields = (design: Design, family: FamilyCard | undefined): FieldGroup[] => [
  {
    key: 'parameters',
    title: titles.parameters,
    fields: Object.entries(family?.parameters ?? {}).map(([key, parameter]) =>
      parameterField(`fixture.parameters.${key}`, parameter, design),
    ),
  },
  { key: 'sequence', title: titles.sequence, fields: [sequence(design)], folded: true },
  {
    key: 'making',
    title: titles.making,
    folded: true,
    fields: [
      choosing('making.plates.process', p.making.plates.process),
      choosing('making.plates.material', p.making.plates.material),
      thicknesses(design),
      numeric('making.plates.kerf', p.making.plates.kerf),
      choosing('making.plates.inches', p.making.plates.inches),
      ...nest(design),
      choosing('making.prints.material', p.making.prints.material),
      choosing('making.prints.fit', p.making.prints.fit),
      numeric('making.prints.play.clearance', p.making.prints.play.clearance),
      numeric('making.prints.play.close', p.making.prints.play.close),
      numeric('making.prints.play.press', p.making.prints.play.press),
      numeric('making.prints.nozzle', p.making.prints.nozzle),
      numeric('making.prints.layer', p.making.prints.layer),
      numeric('making.prints.bed.width', p.making.prints.bed.width),
      numeric('making.prints.bed.depth', p.making.prints.bed.depth),
      numeric('making.prints.bed.height', p.making.prints.bed.height),
      choosing('making.units', p.making.units),
    ],
  },
];

/** What names a design. */
export const designFields: readonly FieldGroup[] = [
  {
    key: 'about',
    title: text.app.designs.about,
    fields: [
      { kind: 'text', path: 'name', words: words.name, most: 80 },
      numeric('revision', p.revision),
      { kind: 'text', path: 'notes', words: words.notes, most: 2000, long: true },
    ],
  },
];
