import type { Grinder, Rest } from '../../grinder/schema.ts';
import { grinderParameters as p } from '../../grinder/parameters.ts';
import { text } from '../../text/index.ts';
import { choosing, numeric, type Field, type FieldGroup } from './field.ts';

const words = text.grinder.parameters;
const titles = text.app.grinder.groups;
const at = 'grinder';

/** A short name that the list does not hold yet. */
const freeId = (stem: string, taken: readonly { readonly id: string }[]): string => {
  const used = new Set(taken.map(({ id }) => id));
  let n = taken.length + 1;
  while (used.has(`${stem}-${n}`)) n += 1;
  return `${stem}-${n}`;
};

const idOf = (path: string): Field => ({ kind: 'text', path, words: words.id, most: 32 });

const belts = (grinder: Grinder): Field => ({
  kind: 'list',
  path: `${at}.belts`,
  words: words.belts,
  items: grinder.belts.map((_, i) => [
    idOf(`${at}.belts.${i}.id`),
    numeric(`${at}.belts.${i}.grit`, p.belts.grit),
    numeric(`${at}.belts.${i}.thickness`, p.belts.thickness),
    { kind: 'text', path: `${at}.belts.${i}.purpose`, words: words.purpose, most: 80 },
  ]),
  least: 1,
  most: 24,
  fresh: () => ({
    id: freeId('belt', grinder.belts),
    grit: p.belts.grit.initial,
    thickness: p.belts.thickness.initial,
    purpose: '',
  }),
});

const BACKINGS = ['none', 'leather', 'rubber', 'radius'] as const;

const backings = (grinder: Grinder): Field => ({
  kind: 'list',
  path: `${at}.backings`,
  words: words.backings,
  items: grinder.backings.map((backing, i): Field[] => {
    const path = `${at}.backings.${i}`;
    const shared = { id: backing.id, thickness: backing.thickness };
    return [
      idOf(`${path}.id`),
      {
        kind: 'variant',
        path,
        words: words.backings.kind,
        options: BACKINGS.map((kind) => ({
          value: kind,
          label: words.backings.kind.options[kind],
          fresh: () =>
            kind === 'radius'
              ? { kind, ...shared, radius: p.backings.radius.initial }
              : { kind, ...shared },
        })),
      },
      numeric(`${path}.thickness`, p.backings.thickness),
      ...(backing.kind === 'radius' ? [numeric(`${path}.radius`, p.backings.radius)] : []),
    ];
  }),
  least: 1,
  most: 12,
  fresh: () => ({ kind: 'leather', id: freeId('backing', grinder.backings), thickness: 5 }),
});

const platen = ({ platen: now }: Grinder): Field[] => {
  const initial = {
    width: p.platen.width.initial,
    bottom: p.platen.bottom.initial,
    top: p.platen.top.initial,
    edgeRadius: p.platen.edgeRadius.initial,
    liner: p.platen.liner.initial,
    ...now,
  };
  const how: Field = {
    kind: 'variant',
    path: `${at}.platen`,
    words: words.platen,
    options: [
      {
        value: 'flat',
        label: words.platen.kinds.flat,
        fresh: () => ({ ...initial, kind: 'flat' }),
      },
      {
        value: 'radius',
        label: words.platen.kinds.radius,
        fresh: () => ({ radius: p.platen.radius.initial, ...initial, kind: 'radius' }),
      },
      { value: 'none', label: words.platen.kinds.none, fresh: () => ({ kind: 'none' }) },
    ],
  };
  if (now.kind === 'none') return [how];
  const names = ['top', 'bottom', 'width', 'edgeRadius', 'liner'] as const;
  return [
    how,
    ...(now.kind === 'radius' ? [numeric(`${at}.platen.radius`, p.platen.radius)] : []),
    ...names.map((name) => numeric(`${at}.platen.${name}`, p.platen[name])),
  ];
};

const wheels = (grinder: Grinder): Field => ({
  kind: 'list',
  path: `${at}.wheels`,
  words: words.wheels,
  items: grinder.wheels.map((_, i) => {
    const path = `${at}.wheels.${i}`;
    return [
      choosing(`${path}.role`, p.wheels.role),
      numeric(`${path}.diameter`, p.wheels.diameter),
      numeric(`${path}.width`, p.wheels.width),
      numeric(`${path}.centre.0`, p.wheels.y),
      numeric(`${path}.centre.1`, p.wheels.z),
      choosing(`${path}.surface`, p.wheels.surface),
    ];
  }),
  least: 1,
  most: 8,
  fresh: () => ({
    id: freeId('wheel', grinder.wheels),
    role: 'idler',
    diameter: p.wheels.diameter.initial,
    width: p.wheels.width.initial,
    centre: [p.wheels.y.initial, p.wheels.z.initial],
    surface: 'hard',
  }),
});

const slot = () => ({
  at: p.rest.slotAt.initial,
  from: p.rest.slotFrom.initial,
  to: p.rest.slotTo.initial,
  width: p.rest.slotWidth.initial,
});

const slots = (now: readonly unknown[], path: string, least: number, most: number): Field => ({
  kind: 'list',
  path,
  words: words.rest.slots,
  items: now.map((_, i) => [
    numeric(`${path}.${i}.at`, p.rest.slotAt),
    numeric(`${path}.${i}.from`, p.rest.slotFrom),
    numeric(`${path}.${i}.to`, p.rest.slotTo),
    numeric(`${path}.${i}.width`, p.rest.slotWidth),
  ]),
  least,
  most,
  fresh: slot,
});

const holes = (now: readonly unknown[], path: string): Field => ({
  kind: 'list',
  path,
  words: words.rest.holes,
  items: now.map((_, i) => [
    numeric(`${path}.${i}.0`, p.rest.holeX),
    numeric(`${path}.${i}.1`, p.rest.holeY),
  ]),
  least: 2,
  most: 60,
  fresh: () => [p.rest.holeX.initial, p.rest.holeY.initial],
});

const patternFields = (rest: Extract<Rest, { kind: 'table' }>): Field[] => {
  const path = `${at}.rest.pattern`;
  const { pattern } = rest;
  const tapped = () => ({ kind: 'tapped', thread: p.rest.thread.initial });
  const plain = () => ({ kind: 'plain', diameter: p.rest.holeDiameter.initial });
  const kinds = words.rest.pattern.kinds;
  const pair = [
    [-40, 40],
    [40, 40],
  ];
  const how: Field = {
    kind: 'variant',
    path,
    words: words.rest.pattern,
    options: [
      {
        value: 'slots',
        label: kinds.slots,
        fresh: () => ({ kind: 'slots', axis: 'y', slots: [slot()] }),
      },
      {
        value: 'holes',
        label: kinds.holes,
        fresh: () => ({ kind: 'holes', at: pair, hole: tapped() }),
      },
      { value: 'edges', label: kinds.edges, fresh: () => ({ kind: 'edges' }) },
    ],
  };
  if (pattern.kind === 'edges') return [how];
  if (pattern.kind === 'slots')
    return [
      how,
      choosing(`${path}.axis`, p.rest.slotAxis),
      slots(pattern.slots, `${path}.slots`, 1, 12),
    ];
  const { hole } = words.rest;
  return [
    how,
    {
      kind: 'variant',
      path: `${path}.hole`,
      words: hole,
      options: [
        { value: 'tapped', label: hole.kinds.tapped, fresh: tapped },
        { value: 'plain', label: hole.kinds.plain, fresh: plain },
      ],
    },
    pattern.hole.kind === 'tapped'
      ? choosing(`${path}.hole.thread`, p.rest.thread)
      : numeric(`${path}.hole.diameter`, p.rest.holeDiameter),
    holes(pattern.at, `${path}.at`),
  ];
};

const restFields = ({ rest }: Grinder): Field[] => {
  const travel = { travelY: rest.travelY, travelZ: rest.travelZ };
  const how: Field = {
    kind: 'variant',
    path: `${at}.rest`,
    words: words.rest,
    options: [
      {
        value: 'table',
        label: words.rest.kinds.table,
        fresh: () => ({
          kind: 'table',
          width: p.rest.width.initial,
          depth: p.rest.depth.initial,
          thickness: p.rest.thickness.initial,
          gap: p.rest.gap.initial,
          pattern: { kind: 'edges' },
          ...travel,
        }),
      },
      {
        value: 'arm',
        label: words.rest.kinds.arm,
        fresh: () => ({
          kind: 'arm',
          width: p.rest.armWidth.initial,
          height: p.rest.armHeight.initial,
          reach: p.rest.armReach.initial,
          slots: [],
          ...travel,
        }),
      },
    ],
  };
  const moves = [
    numeric(`${at}.rest.travelY`, p.rest.travelY),
    numeric(`${at}.rest.travelZ`, p.rest.travelZ),
  ];
  if (rest.kind === 'arm')
    return [
      how,
      numeric(`${at}.rest.width`, p.rest.armWidth),
      numeric(`${at}.rest.height`, p.rest.armHeight),
      numeric(`${at}.rest.reach`, p.rest.armReach),
      slots(rest.slots, `${at}.rest.slots`, 0, 4),
      ...moves,
    ];
  const names = ['width', 'depth', 'thickness', 'gap'] as const;
  return [
    how,
    ...names.map((name) => numeric(`${at}.rest.${name}`, p.rest[name])),
    ...patternFields(rest),
    ...moves,
  ];
};

const keepOuts = (grinder: Grinder): Field => ({
  kind: 'list',
  path: `${at}.keepOuts`,
  words: words.keepOuts,
  items: grinder.keepOuts.map((_, i): Field[] => {
    const path = `${at}.keepOuts.${i}`;
    const corner = (key: 'min' | 'max'): Field[] =>
      ['x', 'y', 'z'].map((axis, n) => ({
        kind: 'number',
        path: `${path}.${key}.${n}`,
        parameter: p.keepOuts.coordinate,
        label: `${words.keepOuts[key].label}, ${axis}`,
      }));
    return [
      { kind: 'text', path: `${path}.name`, words: words.keepOuts.name, most: 60 },
      ...corner('min'),
      ...corner('max'),
      choosing(`${path}.goes`, p.keepOuts.goes),
    ];
  }),
  least: 0,
  most: 24,
  fresh: () => ({ name: text.app.grinder.newBox, min: [30, -60, 0], max: [60, 0, 60] }),
});

/** Every field of the grinder, by heading. */
export const grinderFields = (grinder: Grinder): FieldGroup[] => [
  {
    key: 'general',
    title: titles.general,
    fields: [
      { kind: 'text', path: `${at}.name`, words: words.name, most: 60 },
      numeric(`${at}.lean`, p.lean, true),
    ],
  },
  { key: 'platen', title: titles.platen, fields: platen(grinder) },
  { key: 'rest', title: titles.rest, fields: restFields(grinder) },
  {
    key: 'belt',
    title: titles.belt,
    fields: [
      numeric(`${at}.belt.width`, p.belt.width),
      numeric(`${at}.belt.length`, p.belt.length),
      choosing(`${at}.belt.direction`, p.belt.direction),
      numeric(`${at}.belt.tracking`, p.belt.tracking),
      numeric(`${at}.belt.flutter`, p.belt.flutter),
      numeric(`${at}.belt.splice`, p.belt.splice),
    ],
  },
  { key: 'belts', title: titles.belts, fields: [belts(grinder)], folded: true },
  { key: 'backings', title: titles.backings, fields: [backings(grinder)], folded: true },
  { key: 'wheels', title: titles.wheels, fields: [wheels(grinder)], folded: true },
  { key: 'keepOuts', title: titles.keepOuts, fields: [keepOuts(grinder)], folded: true },
  {
    key: 'drive',
    title: titles.drive,
    folded: true,
    fields: [
      numeric(`${at}.drive.shaftSpeed`, p.drive.shaftSpeed),
      numeric(`${at}.drive.pulleyDiameter`, p.drive.pulleyDiameter),
      numeric(`${at}.drive.beltRating`, p.drive.beltRating),
      numeric(`${at}.drive.wheelRating`, p.drive.wheelRating),
    ],
  },
];
