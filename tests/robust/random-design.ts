import type { Parameter } from '../../src/core/parameter.ts';
import type { Design } from '../../src/document/schema.ts';
import { designParameters } from '../../src/document/parameters.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderParameters } from '../../src/grinder/parameters.ts';
import { ontoGrinder } from '../../src/adapt/onto-grinder.ts';
import type { Registry } from '../../src/family/index.ts';
import type { Random } from '../../src/setup/random.ts';

/**
 * How far from the worked design a random one goes: a few values a little off; a few anywhere in
 * their range, or at an end of it, the rest as worked; most values anywhere, or at an end.
 */
type Mode = 'near' | 'some' | 'ends' | 'anywhere' | 'corner';

/** Out of twenty: what is wild is refused nearly always, and says little more than that. */
const SHARES: readonly (readonly [Mode, number])[] = [
  ['near', 13],
  ['some', 3],
  ['ends', 2],
  ['anywhere', 1],
  ['corner', 1],
];
const MODES: readonly Mode[] = SHARES.flatMap(([mode, n]) => Array.from({ length: n }, () => mode));

const isWild = (mode: Mode): mode is 'anywhere' | 'corner' =>
  mode === 'anywhere' || mode === 'corner';

const pick = <T>(random: Random, list: readonly T[]): T => {
  const found = list[Math.floor(random() * list.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};

/** On the grid a person would type on, so that a failing design can be told in few digits. */
const typed = (value: number): number => Math.round(value * 1000) / 1000;

const numberIn = (random: Random, mode: Mode, min: number, max: number, now: number): number => {
  if (mode === 'corner' || mode === 'ends') return pick(random, [min, max]);
  if (mode === 'anywhere' || mode === 'some') return typed(min + random() * (max - min));
  const width = 0.1 * Math.min(max - min, Math.max(Math.abs(now), 1));
  return typed(Math.min(max, Math.max(min, now + (2 * random() - 1) * width)));
};

const valueOf = (random: Random, mode: Mode, p: Parameter, now: unknown): number | string => {
  if (p.kind === 'choice') return pick(random, p.options).value;
  const found = numberIn(random, mode, p.min, p.max, typeof now === 'number' ? now : p.initial);
  // Coarse steps are those of stock: a sheet of 5.37 mm would be refused before anything is tried.
  const value = p.step >= 0.5 && random() < 0.9 ? Math.round(found / p.step) * p.step : found;
  return p.unit === 'count' ? Math.round(value) : value;
};

/** How many of a fixture's values a design changes that is not wild. */
const FEW = { near: 3, some: 2, ends: 2 } as const;

const parametersOf = (
  random: Random,
  mode: Mode,
  design: Design,
  { families }: Registry,
): Design => {
  const table = Object.entries(families[design.fixture.family]?.parameters ?? {});
  const count = isWild(mode) ? 0 : FEW[mode];
  const few = new Set(Array.from({ length: count }, () => pick(random, table)[0]));
  const parameters = Object.fromEntries(
    table.map(([key, parameter]) => {
      const now = design.fixture.parameters[key] ?? parameter.initial;
      const isChanged = isWild(mode) ? random() < 0.6 : few.has(key);
      return [key, isChanged ? valueOf(random, mode, parameter, now) : now];
    }),
  );
  return { ...design, fixture: { ...design.fixture, parameters } };
};

type Blade = Design['blades'][number];

/** A blade scaled in length, height, thickness, with another taper and other bevels. */
const bladeOf = (random: Random, mode: Mode, blade: Blade): Blade => {
  const wide = isWild(mode) ? 0.6 : 0.04;
  const around = (): number => Math.exp((2 * random() - 1) * wide);
  const [long, high, thick] = [around(), around(), around()];
  const { outline } = blade;
  const along = (u: number): number => typed(u * long);
  const across = (v: number): number => typed(v * high);
  const scaled: Blade['outline'] =
    outline.kind === 'dimensions'
      ? {
          ...outline,
          length: along(outline.length),
          heelHeight: across(outline.heelHeight),
          bellyStart: along(outline.bellyStart),
          bellyHeight: across(outline.bellyHeight),
          spineDropStart: along(outline.spineDropStart),
          tipDrop: across(outline.tipDrop),
          spineSagitta: random() < 0.2 ? typed(4 * random() - 2) : outline.spineSagitta,
        }
      : {
          ...outline,
          spine: outline.spine.map(([u, v]): [number, number] => [along(u), across(v)]),
          edge: outline.edge.map(([u, v]): [number, number] => [along(u), across(v)]),
        };
  const bevel = (now: Blade['bevels']['left']): Blade['bevels']['left'] => {
    if (now.kind === 'height') return { ...now, height: typed(now.height * high * around()) };
    if (now.kind === 'angle') return { ...now, angle: typed(now.angle * around()) };
    return !isWild(mode) || random() < 0.8
      ? now
      : pick(random, [{ kind: 'full' }, { kind: 'none' }, { kind: 'angle', angle: 4 }] as const);
  };
  return {
    ...blade,
    outline: scaled,
    ricasso: isWild(mode) && random() < 0.2 ? typed(25 * random()) : blade.ricasso,
    thickness: blade.thickness.map(({ u, t }) => ({ u: along(u), t: typed(t * thick) })),
    spineRadius: random() < 0.3 ? typed(0.8 * random()) : blade.spineRadius,
    bevels: { left: bevel(blade.bevels.left), right: bevel(blade.bevels.right) },
  };
};

/** The last of the blades left alone on its right side. */
const withOneSide = (blades: readonly Blade[]): Blade[] =>
  blades.map((blade, i) =>
    i === blades.length - 1
      ? { ...blade, bevels: { ...blade.bevels, right: { kind: 'none' } } }
      : blade,
  );

/** Sheets of a workshop that keeps most sizes. */
const SHEETS = [4, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 12];

/** Parameters that name a sheet: who is not wild chooses one that is at hand. */
const SHEET_KEYS = ['plate', 'base', 'packer', 'thickness'];

/** Processes that cut what another one cuts: what a beam cuts a saw and a drill may not. */
const PROCESSES = {
  laser: ['laser', 'waterjet'],
  waterjet: ['laser', 'waterjet'],
  plasma: ['plasma', 'laser', 'waterjet'],
  'saw-drill': ['saw-drill', 'laser', 'waterjet'],
} as const;

const makingOf = (random: Random, mode: Mode, design: Design): Design['making'] => {
  const { making } = design;
  const p = designParameters.making;
  const chosen = SHEET_KEYS.map((key) => design.fixture.parameters[key]);
  const thicknesses = isWild(mode)
    ? SHEETS
    : [...new Set([...making.plates.thicknesses, ...chosen])]
        .filter((t) => typeof t === 'number')
        .sort((a, b) => a - b);
  if (random() < 0.5) return { ...making, plates: { ...making.plates, thicknesses } };
  const processes = isWild(mode)
    ? (['laser', 'waterjet', 'plasma', 'saw-drill'] as const)
    : PROCESSES[making.plates.process];
  const kerf = p.plates.kerf;
  return {
    units: pick(random, ['mm', 'in']),
    plates: {
      process: pick(random, processes),
      material: pick(random, ['steel', 'stainless', 'aluminium'] as const),
      thicknesses,
      kerf: random() < 0.5 ? 0 : numberIn(random, isWild(mode) ? mode : 'near', 0, kerf.max, 0.2),
      inches: 'beside',
      nest: { sheets: 'beside', width: 600, height: 400, gap: 5, margin: 10 },
    },
    prints: {
      ...making.prints,
      fit: pick(random, ['clearance', 'close', 'press'] as const),
      nozzle: numberIn(random, mode, p.prints.nozzle.min, p.prints.nozzle.max, 0.4),
      layer: p.prints.layer.min,
    },
  };
};

const grinderOf = (random: Random, mode: Mode, design: Design): Design => {
  const what = random();
  // Who is not wild takes a fixture to a grinder with the same kind of face and the same wheels.
  const roles = new Set(design.grinder.wheels.map(({ role }) => role));
  const presets = Object.values(grinderPresets).filter(
    ({ platen, wheels }) =>
      isWild(mode) ||
      (platen.kind === design.grinder.platen.kind &&
        [...roles].every((role) => wheels.some((wheel) => wheel.role === role))),
  );
  if (presets.length > 0 && what < (isWild(mode) ? 0.3 : 0.08))
    return ontoGrinder(design, pick(random, presets)).design;
  if (what < 0.7) return design;
  const { grinder } = design;
  const g = grinderParameters;
  const how = isWild(mode) ? mode : 'near';
  const lean = numberIn(random, how, g.lean.min, g.lean.max, grinder.lean);
  const width = numberIn(random, how, g.rest.width.min, g.rest.width.max, grinder.rest.width);
  return { ...design, grinder: { ...grinder, lean, rest: { ...grinder.rest, width } } };
};

/**
 * A random design within all ranges, most of them within what holds the fields together too: a
 * worked design with fixture, blades, grinder and making changed a little, a few values anywhere or
 * at the ends of their ranges, or wildly. The same generator gives the same design.
 */
export const randomDesign = (
  random: Random,
  worked: readonly Design[],
  registry: Registry,
): { readonly design: Design; readonly mode: Mode } => {
  const mode = pick(random, MODES);
  const start = pick(random, worked);
  const moved = grinderOf(random, mode, start);
  const fitted = parametersOf(random, mode, moved, registry);
  const scaled =
    random() < 0.5 ? fitted.blades : fitted.blades.map((blade) => bladeOf(random, mode, blade));
  // Now and then one blade of several is ground on one side only.
  const blades = mode === 'some' && scaled.length > 1 ? withOneSide(scaled) : scaled;
  return { design: { ...fitted, blades, making: makingOf(random, mode, fitted) }, mode };
};
