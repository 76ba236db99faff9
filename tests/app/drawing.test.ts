import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrange, PITCH, type PlacedMeasure } from '../../src/app/draw/arrange.ts';
import { lettersOf } from '../../src/app/draw/letters.ts';
import type { Picture } from '../../src/app/draw/picture.ts';
import { measureText } from '../../src/app/draw/rows.ts';
import { roundLength } from '../../src/app/draw/scale-bar.ts';
import { DISPLAYS } from '../../src/app/entry/unit.ts';
import { beltSection } from '../../src/app/pictures/belt-section.ts';
import { bladePlan, bladeSide } from '../../src/app/pictures/blade.ts';
import { bladeSketch } from '../../src/app/pictures/blade-sketch.ts';
import { bladeSection } from '../../src/app/pictures/blade-section.ts';
import { grinderFront, grinderSide } from '../../src/app/pictures/grinder.ts';
import { restPlan } from '../../src/app/pictures/rest.ts';
import type { Blade } from '../../src/blade/schema.ts';
import { grinderPresets } from '../../src/grinder/presets/index.ts';
import { examplesOf, solved } from '../family/examples.ts';
import { example, EXAMPLES } from './sample.ts';

const blades: readonly Blade[] = EXAMPLES.flatMap((name) => example(name).blades);

/** Widths in px at which a drawing is brief, and at which it is not. */
const NARROW = [300, 330, 420, 559];
const WIDE = [560, 700, 950];

type Case = readonly [string, Picture, readonly number[]];

const pictures: readonly Case[] = [
  ...blades.flatMap((blade): Case[] => [
    [`${blade.name}, side, brief`, bladeSide(blade, 'blades.0', true), NARROW],
    [`${blade.name}, side`, bladeSide(blade, 'blades.0', false), WIDE],
    [`${blade.name}, plan, brief`, bladePlan(blade, 'blades.0', true), NARROW],
    [`${blade.name}, plan`, bladePlan(blade, 'blades.0', false), WIDE],
    [`${blade.name}, section`, bladeSection(blade, 'blades.0', 100), [...NARROW, ...WIDE]],
  ]),
  ...Object.values(grinderPresets).flatMap((grinder): Case[] => [
    [`${grinder.name}, side, brief`, grinderSide(grinder, true), NARROW],
    [`${grinder.name}, side`, grinderSide(grinder, false), WIDE],
    [`${grinder.name}, front`, grinderFront(grinder), [...NARROW, ...WIDE]],
    [`${grinder.name}, rest, brief`, restPlan(grinder, true), NARROW],
    [`${grinder.name}, rest`, restPlan(grinder, false), WIDE],
  ]),
];

interface Box {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

const labelBox = ({ at: [x, y], length, measure }: PlacedMeasure): Box => {
  const [w, h] = measure.along === 'y' ? [PITCH, length] : [length, PITCH];
  return { x0: x - w / 2, y0: y - h / 2, x1: x + w / 2, y1: y + h / 2 };
};

const meet = (a: Box, b: Box): boolean =>
  a.x0 < b.x1 - 1e-6 && b.x0 < a.x1 - 1e-6 && a.y0 < b.y1 - 1e-6 && b.y0 < a.y1 - 1e-6;

describe('drawings on the screen', () => {
  it.each(pictures)('%s: no figure covers another, all on the sheet', (_, picture, widths) => {
    for (const width of widths)
      for (const display of DISPLAYS) {
        const fit = arrange(picture, width, 400, display);
        const boxes = fit.measures.filter((m) => m.measure.along !== 'at').map(labelBox);
        for (const [i, box] of boxes.entries()) {
          expect(boxes.slice(i + 1).some((other) => meet(box, other))).toBe(false);
          expect(box.x0).toBeGreaterThanOrEqual(-1);
          expect(box.y0).toBeGreaterThanOrEqual(-1);
          expect(box.x1).toBeLessThanOrEqual(width + 1);
          expect(box.y1).toBeLessThanOrEqual(fit.height + 1);
        }
      }
  });

  it('keeps one scale in both directions', () => {
    for (const [, picture] of pictures) {
      const { place, scale } = arrange(picture, 700, 400, 'mm');
      const [x0, y0] = place([0, 0]);
      const [x1, y1] = place([10, 10]);
      expect(x1 - x0).toBeCloseTo(10 * scale, 9);
      expect(y0 - y1).toBeCloseTo(10 * scale, 9);
    }
  });

  it('draws a second view at the scale and place of the first', () => {
    const [blade] = blades;
    if (!blade) throw new Error('no blade');
    const side = arrange(bladeSide(blade, 'blades.0', false), 900, 320, 'mm');
    const plan = arrange(bladePlan(blade, 'blades.0', false), 900, 320, 'mm', side);
    expect(plan.scale).toBe(side.scale);
    expect(plan.place([50, 0])[0]).toBeCloseTo(side.place([50, 0])[0], 9);
  });

  it('dimensions measure what they say', () => {
    for (const [, picture] of pictures)
      for (const { measure, a, b } of arrange(picture, 800, 400, 'mm').measures) {
        if (measure.unit !== 'mm' || measure.along === 'at') continue;
        const axis = measure.along === 'x' ? 0 : 1;
        const drawn = Math.abs(b[axis] - a[axis]);
        const { scale } = arrange(picture, 800, 400, 'mm');
        // The thickness of a plan view stands on a leader, without a length of its own.
        if (drawn < 1e-9) continue;
        expect(drawn / scale).toBeCloseTo(Math.abs(measure.value), 6);
      }
  });

  it('draws whatever the values, without a number that is none', () => {
    const [blade] = blades;
    if (blade?.outline.kind !== 'dimensions') throw new Error('no blade with dimensions');
    const { outline } = blade;
    const length = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(length, length, length, length, (l, belly, drop, tip) => {
        const strange: Blade = {
          ...blade,
          outline: {
            ...outline,
            length: l + 30,
            bellyStart: belly,
            spineDropStart: drop,
            tipDrop: tip / 5,
          },
        };
        for (const picture of [bladeSide(strange, 'b', false), bladeSection(strange, 'b', 100)]) {
          if (picture.lines.length === 0) continue;
          const fit = arrange(picture, 360, 300, 'mm');
          expect(Number.isFinite(fit.height) && Number.isFinite(fit.scale)).toBe(true);
          for (const line of picture.lines)
            for (const point of line.points)
              expect(fit.place(point).every(Number.isFinite)).toBe(true);
        }
      }),
    );
  });
});

describe('the section at the belt', () => {
  it.each(['spine-rest', 'edge-rest', 'carriage', 'backing-carrier'])(
    'of a %s writes what it measures in the unit of the page, as its family has it in mm',
    (family) => {
      for (const one of examplesOf(family)) {
        const fixture = solved(one);
        const section = fixture.section(fixture.settings[0]?.id ?? '');
        const read = section.dimensions.filter(({ path }) => path === undefined);
        const { measures } = beltSection(section, () => undefined);
        read.forEach(({ text }) => {
          const inches = measures.map((measure) => Number(measureText(measure, 'inch')));
          const off = inches.map((value) => Math.abs(value - Number(text) / 25.4));
          // 0.005 mm by the figure of the drawing, 0.00005 inch by that of the page.
          expect(Math.min(...off)).toBeLessThan(0.005 / 25.4 + 0.00006);
        });
      }
    },
  );
});

describe('scale bar', () => {
  it.each([
    [120, 'mm', 100],
    [99, 'mm', 50],
    [3, 'mm', 2],
    [60, 'inch', 50.8],
    [20, 'fraction', 12.7],
  ] as const)('at most %d mm in %s is %d', (most, display, length) => {
    expect(roundLength(most, display)).toBeCloseTo(length, 9);
  });
});

describe('names on a drawing', () => {
  const picture = (labels: Picture['labels']): Picture => ({
    name: 'block',
    lines: [
      {
        points: [
          [0, 0],
          [100, 0],
          [100, 40],
          [0, 40],
        ],
        closed: true,
        role: 'fixture',
      },
    ],
    discs: [],
    labels,
    measures: [],
  });
  const name = (text: string, at: readonly [number, number]) =>
    ({ text, at, anchor: 'middle', level: true }) as const;

  it('stay where they are when there is room', () => {
    const drawn = picture([name('one', [25, 20]), name('two', [75, 20])]);
    for (const { leader } of lettersOf(drawn, arrange(drawn, 500, 300, 'mm')))
      expect(leader).toBeNull();
  });

  it('never cover each other, and step aside on a leader that starts at what they name', () => {
    const place = fc.tuple(fc.double({ min: 5, max: 95, noNaN: true }), fc.constant(20));
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 4 }), (places) => {
        const drawn = picture(places.map((at, i) => name(`name ${i}`, at)));
        const fit = arrange(drawn, 500, 300, 'mm');
        const letters = lettersOf(drawn, fit);
        const boxes = letters.map(({ x, y, anchor, text }): Box => {
          const wide = text.length * 7;
          const x0 = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
          return { x0, y0: y - 11, x1: x0 + wide, y1: y + 2 };
        });
        for (const [i, box] of boxes.entries())
          expect(boxes.slice(i + 1).some((other) => meet(box, other))).toBe(false);
        for (const [i, { leader }] of letters.entries())
          if (leader) expect(leader[0]).toEqual(fit.place(drawn.labels[i]?.at ?? [0, 0]));
      }),
      { numRuns: 60 },
    );
  });

  it('do not cover a line where there is room beside it', () => {
    const drawn = picture([name('on the edge', [50, 40])]);
    const [letter] = lettersOf(drawn, arrange(drawn, 500, 300, 'mm'));
    expect(letter?.leader).not.toBeNull();
  });
});

describe('the sketch of a worked example', () => {
  it('has the grind line where the blade asks for it, all blades in one frame', () => {
    for (const blade of blades) {
      const { outline, tang, line } = bladeSketch(blade);
      for (const [x, y] of [...outline, ...tang, ...line]) {
        expect(x).toBeGreaterThan(-57);
        expect(x).toBeLessThan(216);
        expect(y).toBeGreaterThan(-6);
        expect(y).toBeLessThan(60);
      }
    }
    // 23 mm above an edge that lies 49.5 mm deep in the middle of its straight part.
    const kitchen = example('kitchen-210').blades[0];
    if (!kitchen) throw new Error('no blade');
    const middle = bladeSketch(kitchen).line.reduce((a, b) =>
      Math.abs(b[0] - 47.5) < Math.abs(a[0] - 47.5) ? b : a,
    );
    expect(middle[1]).toBeCloseTo(49.5 - 23, 1);
  });
});
