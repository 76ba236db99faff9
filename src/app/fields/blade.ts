import { bladeParameters as p } from '../../blade/parameters.ts';
import type { Bevel, Blade } from '../../blade/schema.ts';
import { text } from '../../text/index.ts';
import { choosing, numeric, type Field, type FieldGroup } from './field.ts';

const words = text.blade.parameters;
const titles = text.app.blade.groups;

const outlineFields = (blade: Blade, at: string): Field[] => {
  if (blade.outline.kind === 'curves') return [];
  const names = [
    'length',
    'heelHeight',
    'bellyStart',
    'bellyHeight',
    'spineDropStart',
    'tipDrop',
    'spineSagitta',
  ] as const;
  return names.map((name) => numeric(`${at}.outline.${name}`, p.outline[name], true));
};

/** The usual values of each way to state a bevel. */
const fresh = (kind: Bevel['kind']): Bevel => {
  switch (kind) {
    case 'height':
      return { kind, height: p.bevels.height.initial };
    case 'angle':
      return { kind, angle: p.bevels.angle.initial };
    case 'hollow':
      return {
        kind,
        depth: p.bevels.depth.initial,
        centre: p.bevels.centre.initial,
        angle: p.bevels.angle.initial,
      };
    case 'full':
    case 'none':
      return { kind };
  }
};

const BEVELS = ['height', 'angle', 'full', 'hollow', 'none'] as const;

const bevelFields = (bevel: Bevel, at: string, side: 'left' | 'right'): Field[] => {
  const path = `${at}.bevels.${side}`;
  const sided = (name: 'height' | 'angle' | 'depth' | 'centre'): Field => ({
    kind: 'number',
    path: `${path}.${name}`,
    parameter: p.bevels[name],
    slider: true,
    label: text.app.entry.of(p.bevels[name].label, text.app.setup.sides[side]),
  });
  const how: Field = {
    kind: 'variant',
    path,
    words: words.bevels[side],
    options: BEVELS.map((kind) => ({
      value: kind,
      label: words.bevels.kinds[kind],
      fresh: () => fresh(kind),
    })),
  };
  switch (bevel.kind) {
    case 'height':
      return [how, sided('height')];
    case 'angle':
      return [how, sided('angle')];
    case 'hollow':
      return [
        how,
        sided('depth'),
        sided('centre'),
        // A hollow in the flat of the stock has no bevel.
        ...(bevel.angle === undefined ? [] : [sided('angle')]),
      ];
    case 'full':
    case 'none':
      return [how];
  }
};

const thicknessList = (blade: Blade, at: string): Field => ({
  kind: 'list',
  path: `${at}.thickness`,
  words: words.thickness,
  items: blade.thickness.map((_, i) => [
    numeric(`${at}.thickness.${i}.u`, p.thickness.u),
    numeric(`${at}.thickness.${i}.t`, p.thickness.t),
  ]),
  least: 1,
  most: 12,
  fresh: () => {
    const last = blade.thickness.at(-1);
    return { u: (last?.u ?? 0) + 50, t: last?.t ?? p.thickness.t.initial };
  },
});

/** Every field of one blade, by heading. */
export const bladeFields = (blade: Blade, at: string): FieldGroup[] => [
  { key: 'outline', title: titles.outline, fields: outlineFields(blade, at) },
  {
    key: 'bevels',
    title: titles.bevels,
    fields: [
      ...bevelFields(blade.bevels.left, at, 'left'),
      ...bevelFields(blade.bevels.right, at, 'right'),
      numeric(`${at}.edge.asHeatTreated`, p.edge.asHeatTreated),
      numeric(`${at}.edge.wanted`, p.edge.wanted),
      numeric(`${at}.edge.shareLeft`, p.edge.shareLeft),
    ],
  },
  {
    key: 'body',
    title: titles.body,
    fields: [thicknessList(blade, at), numeric(`${at}.spineRadius`, p.spineRadius)],
  },
  {
    key: 'line',
    title: titles.line,
    fields: [
      choosing(`${at}.line.follow`, p.line.follow),
      numeric(`${at}.line.allowed`, p.line.allowed),
    ],
  },
  {
    key: 'tang',
    title: titles.tang,
    fields: [
      choosing(`${at}.tang.kind`, p.tang.kind),
      numeric(`${at}.ricasso`, p.ricasso),
      numeric(`${at}.tang.length`, p.tang.length),
      numeric(`${at}.tang.height`, p.tang.height),
      numeric(`${at}.tang.thickness`, p.tang.thickness),
      numeric(`${at}.tang.drop`, p.tang.drop),
    ],
  },
  {
    key: 'general',
    title: titles.general,
    fields: [
      { kind: 'text', path: `${at}.name`, words: words.name, most: 60 },
      numeric(`${at}.quantity`, p.quantity),
    ],
  },
];
