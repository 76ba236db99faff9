import { mm } from './lengths.ts';

const named = (noun: string, ids: readonly string[], plural = `${noun}s`): string =>
  `${ids.length === 1 ? noun : plural} ${ids.map((id) => `"${id}"`).join(', ')}`;

/** Words of the rules of cutting and printing. */
export const rules = {
  process: {
    laser: 'laser cutting',
    waterjet: 'water-jet cutting',
    plasma: 'plasma cutting',
    'saw-drill': 'sawing and drilling',
  },
  printing: (nozzle: number) => `printing with a nozzle of ${mm(nozzle)}`,
  below: (feature: string, value: number, process: string, least: number) =>
    `${feature} is ${mm(value)}; ${process} needs at least ${mm(least)}.`,
  tight: (feature: string, value: number, process: string, advised: number) =>
    `${feature} is ${mm(value)}; ${mm(advised)} or more is advised for ${process}.`,
  hole: (part: string, ids: readonly string[]) =>
    `The diameter of ${named('hole', ids)} of ${part}`,
  slot: (part: string, ids: readonly string[]) => `The width of ${named('slot', ids)} of ${part}`,
  edge: (part: string, ids: readonly string[]) =>
    `The material between ${named('hole', ids)} and the outline of ${part}`,
  pair: (one: string, other: string) => `"${one}" and "${other}"`,
  web: (part: string, pairs: readonly string[]) =>
    `The material between holes ${pairs.join(', ')} of ${part}`,
  layer: (which: number) => `layer ${String(which)}`,
  wall: (part: string, layers: readonly string[]) =>
    `The thinnest wall in ${layers.join(', ')} of ${part}`,
  post: (part: string, layers: readonly string[]) =>
    `The diameter of the post in ${layers.join(', ')} of ${part}`,
  corners: (part: string) => `The inner corners of ${part}`,
  innerCorner: (part: string, count: number, radius: number) =>
    `${part} has ${String(count)} inner corners sharper than the cut: they come out with a radius of about ${mm(radius)}.`,
  larger: 'Make it larger, use thinner sheet, or mark it and drill it afterwards.',
  otherProcess:
    'Choose laser, water jet, or saw and drill for the plates: drilled holes come with a template. Or make it larger, or use thinner sheet.',
  inward: 'Move the hole inward, make it smaller or make the plate larger.',
  apart: 'Move the holes apart or make them smaller.',
  thicker: 'Make it thicker, or print with a finer nozzle.',
  relieve: 'Round the corners, or file them where a square edge has to fit.',
} as const;
