import { outlineLoop } from '../blade/outline.ts';
import type { Blade } from '../blade/schema.ts';
import { shapeOf } from '../blade/shape.ts';
import { plain } from '../core/units.ts';
import type { Design } from '../document/schema.ts';
import type { Section, SectionDimension, SectionShape } from '../drawing/belt-section.ts';
import type { Fixture, Reading, Setting } from '../family/index.ts';
import { flatten } from '../geometry/flatten.ts';
import type { Vec2 } from '../geometry/vector.ts';
import { text } from '../text/index.ts';
import { sectionOf } from './belt-section.ts';

const words = text.make.setup;

/** How far the drawn outline may be off, mm: less than a line is wide on the paper. */
const TOLERANCE = 0.2;

/** What the pictures of a set-up sheet show, and the letters of the readings in them, by key. */
export interface SetupPictures {
  readonly letters: ReadonlyMap<string, string>;
  readonly section: Section;
  /** Every blade from its side, edge up: its stops, and the places where it is measured. */
  readonly blades: readonly Section[];
}

const letter = (i: number): string => String.fromCharCode('A'.charCodeAt(0) + i);

/** Places of a setting on one blade, with the bevel that is expected at each. */
export const placesOf = (setting: Setting | undefined, blade: string): Setting['expected'] =>
  setting?.expected.filter((entry) => entry.blade === blade) ?? [];

const bladeOf = (
  blade: Blade,
  { settings, lines, alongBlade = {} }: Fixture,
  along: readonly Reading[],
  letters: ReadonlyMap<string, string>,
): Section => {
  const shape = shapeOf(blade);
  const edge = (u: number): number => shape.edge.value(u);
  const spine = (u: number): number => shape.spine.value(u);
  const ground = lines.find((line) => line.blade === blade.name)?.places ?? [];
  const upright = (u: number): SectionShape => ({
    points: [
      [u, Math.min(0, spine(u)) - 3],
      [u, edge(Math.max(0, u)) + 3],
    ],
    isClosed: false,
    stroke: 'phantom',
    fill: 'none',
  });
  const stops = along.map(({ key, value }) => ({
    name: letters.get(key) ?? '',
    u: alongBlade[key] === 'tang' ? -value : value,
  }));
  const places = placesOf(settings.at(-1), blade.name);
  const span = (u: number, name: string): SectionDimension => ({
    kind: 'linear',
    axis: 'x',
    a: [Math.min(u, 0), 0],
    b: [Math.max(u, 0), 0],
    side: 'bottom',
    text: name,
  });
  return {
    title: words.bladePicture(blade.name),
    shapes: [
      {
        points: flatten(outlineLoop(blade, TOLERANCE), TOLERANCE),
        isClosed: true,
        stroke: 'visible',
        fill: 'none',
      },
      {
        points: ground.map(({ u, bevelHeight }): Vec2 => [u, edge(u) - bevelHeight]),
        isClosed: false,
        stroke: 'dimension',
        fill: 'none',
      },
      upright(0),
      ...stops.map(({ u }) => upright(u)),
    ],
    dimensions: [
      ...stops.map(({ u, name }) => span(u, name)),
      ...places.map(({ place, u }): SectionDimension => ({
        kind: 'note',
        at: [u, edge(u)],
        text: words.placeAt(text.make.place[place], plain(u, 1)),
      })),
    ],
  };
};

/**
 * The section at the belt and the sides of the blades, in which readings stand by their letters:
 * what is set differs from belt to belt, and the tables of the sheet tell it.
 */
export const setupPictures = (design: Design, fixture: Fixture): SetupPictures => {
  const { settings, alongBlade = {} } = fixture;
  const readings = settings[0]?.readings ?? [];
  const seen = fixture.section(settings[0]?.id ?? '');
  const along = readings.filter(({ key }) => key in alongBlade);
  const shown = new Set([
    ...seen.dimensions.flatMap(({ reading }) => (reading === undefined ? [] : [reading])),
    ...along.map(({ key }) => key),
  ]);
  const letters = new Map(
    readings.filter(({ key }) => shown.has(key)).map(({ key }, i) => [key, letter(i)]),
  );
  const blades = design.blades.map((blade) => bladeOf(blade, fixture, along, letters));
  const section = sectionOf({
    ...seen,
    dimensions: seen.dimensions.map((dimension) => ({
      ...dimension,
      text: letters.get(dimension.reading ?? '') ?? dimension.text,
    })),
  });
  return { letters, section, blades };
};
