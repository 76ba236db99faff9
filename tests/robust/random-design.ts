import type { Parameter } from '../../src/core/parameter.ts';
import type { Design } from '../../src/document/schema.ts';
import { designParameters } from '../../src/document/parameters.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { grinderParameters } from '../../src/grinder/parameters.ts';
import { ontoGrinder } from '../../src/adapt/onto-grinder.ts';
import type { Registry } from '../../src/family/index.ts';
import type { Random } from '../../src/setup/random.ts';

/** How far from the worked design a random one may go. */
type Mode = 'near' | 'anywhere' | 'corner';

const MODES: readonly Mode[] = ['near', 'near', 'near', 'anywhere', 'corner'];

const pick = <T>(random: Random, list: readonly T[]): T => {
  const found = list[Math.floor(random() * list.length)];
  if (found === undefined) throw new Error('nothing to pick from');
  return found;
};

/** On the grid a person would type on, so that a failing design can be told in few digits. */
const typed = (value: number): number => Math.round(value * 1000) / 1000;

const numberIn = (random: Random, mode: Mode, min: number, max: number, now: number): number => {
  if (mode === 'corner') return pick(random, [min, max]);
  if (mode === 'anywhere') return typed(min + random() * (max - min));
  const width = 0.15 * Math.min(max - min, Math.max(Math.abs(now), 1));
  return typed(Math.min(max, Math.max(min, now + (2 * random() - 1) * width)));
};

const valueOf = (random: Random, mode: Mode, p: Parameter, now: unknown): number | string => {
  if (p.kind === 'choice') return pick(random, p.options).value;
  const found = numberIn(random, mode, p.min, p.max, typeof now === 'number' ? now : p.initial);
  // Coarse steps are those of stock: a sheet of 5.37 mm would be refused before anything is tried.
  const value = p.step >= 0.5 && random() < 0.9 ? Math.round(found / p.step) * p.step : found;
  return p.unit === 'count' ? Math.round(value) : value;
};

const parametersOf = (
  random: Random,
  mode: Mode,
  design: Design,
  { families }: Registry,
): Design => {
  const table = families[design.fixture.family]?.parameters ?? {};
  const share = mode === 'near' ? 0.15 : 0.6;
  const parameters = Object.fromEntries(
    Object.entries(table).map(([key, parameter]) => {
      const now = design.fixture.parameters[key] ?? parameter.initial;
      return [key, random() < share ? valueOf(random, mode, parameter, now) : now];
    }),
  );
  return { ...design, fixture: { ...design.fixture, parameters } };
};

type Blade = Design['blades'][number];

/** A blade scaled in length, height, thickness, with another taper and other bevels. */
const bladeOf = (random: Random, mode: Mode, blade: Blade): Blade => {
  const wide = mode === 'near' ? 0.05 : 0.6;
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
    return mode === 'near' || random() < 0.8
      ? now
      : pick(random, [{ kind: 'full' }, { kind: 'none' }, { kind: 'angle', angle: 4 }] as const);
  };
  return {
    ...blade,
    outline: scaled,
    ricasso: random() < 0.2 ? typed(25 * random()) : blade.ricasso,
    thickness: blade.thickness.map(({ u, t }) => ({ u: along(u), t: typed(t * thick) })),
    spineRadius: random() < 0.3 ? typed(0.8 * random()) : blade.spineRadius,
    bevels: { left: bevel(blade.bevels.left), right: bevel(blade.bevels.right) },
  };
};

const makingOf = (random: Random, mode: Mode, design: Design): Design['making'] => {
  const { making } = design;
  const p = designParameters.making;
  const thicknesses = [4, 5, 5.5, 6, 6.5, 7, 8, 9, 10, 12];
  if (random() < 0.5) return { ...making, plates: { ...making.plates, thicknesses } };
  return {
    units: pick(random, ['mm', 'in']),
    plates: {
      process: pick(random, ['laser', 'waterjet', 'plasma', 'saw-drill'] as const),
      material: pick(random, ['steel', 'stainless', 'aluminium'] as const),
      thicknesses,
      kerf: random() < 0.5 ? 0 : numberIn(random, mode, 0, p.plates.kerf.max, 0.2),
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
  if (what < 0.55) return design;
  if (what < 0.8) return ontoGrinder(design, pick(random, Object.values(grinderPresets))).design;
  const { grinder } = design;
  const g = grinderParameters;
  const lean = numberIn(random, mode, g.lean.min, g.lean.max, grinder.lean);
  const width = numberIn(random, mode, g.rest.width.min, g.rest.width.max, grinder.rest.width);
  return { ...design, grinder: { ...grinder, lean, rest: { ...grinder.rest, width } } };
};

/**
 * A random design, most within all ranges, about half within what holds the fields together:
 * a worked design with fixture, blades, grinder and making changed a little, anywhere, or to the
 * corners of their ranges. The same generator gives the same design.
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
  const blades =
    random() < 0.5 ? fitted.blades : fitted.blades.map((blade) => bladeOf(random, mode, blade));
  return { design: { ...fitted, blades, making: makingOf(random, mode, fitted) }, mode };
};
