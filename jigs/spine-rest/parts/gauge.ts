import { polygon, type PrintPart, radians, tan, text } from '../../../src/family/index.ts';
import { printed, words as shared, type Context } from '../../shared/parts/context.ts';

const words = text.family.spineRest.parts;

/**
 * The setting gauge: a bar as wide as the last setting, lying on the seat between belt and step.
 * Its front follows a platen that leans towards the maker, so that it touches at the seat.
 */
export const gauge = (c: Context): PrintPart => {
  const { name, density } = printed(c);
  const { width, height, length } = c.l.gauge;
  const back = Math.max(0, -tan(radians(c.lean)) * height);
  return {
    kind: 'print',
    id: 'setting-gauge',
    name: words.names.gauge,
    quantity: 1,
    material: name,
    density,
    finish: shared.finish.print,
    layers: [
      {
        profile: {
          outer: polygon([
            [0, 0],
            [width, 0],
            [width, height],
            [back, height],
          ]),
          holes: [],
        },
        from: 0,
        to: length,
      },
    ],
    holes: [],
    notes: [words.notes.gauge(width)],
    tight: [],
  };
};
