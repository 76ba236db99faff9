import { plain } from '../../../core/units.ts';
import { mm } from '../lengths.ts';

/** What an output of a tolerance budget is called within a sentence, with its unit. */
const outputs = {
  angle: ['the angle', 'degrees'],
  bevelHeight: ['the bevel height', 'mm'],
  edgeThickness: ['the edge thickness', 'mm'],
  difference: ['the difference of the two sides', 'mm'],
  tilt: ['the tilt', 'degrees'],
  upperLimit: ['the upper limit of the hollow', 'mm'],
  web: ['the steel left between the hollows', 'mm'],
} as const;

/** A value with two digits that count. */
const two = (value: number): string => plain(value, value < 0.1 ? 3 : 2);

const moves = (key: keyof typeof outputs, effect: number, budget: number): string => {
  const [name, unit] = outputs[key];
  return `This moves ${name} by ${two(effect)} ${unit} at most, the whole tolerance budget by ${two(budget)} ${unit}`;
};

/** Features that the tolerance budget singles out, and what nearness buys. */
export const tight = {
  near: (
    feature: string,
    within: number,
    felt: { readonly key: keyof typeof outputs; readonly effect: number; readonly budget: number },
    enough: boolean,
  ) =>
    `${feature} within ${mm(within)}. ${moves(felt.key, felt.effect, felt.budget)}${
      enough ? '' : '; what comes nearer is still felt'
    }`,
  given: (
    feature: string,
    felt: { readonly key: keyof typeof outputs; readonly effect: number; readonly budget: number },
  ) => `${feature}. ${moves(felt.key, felt.effect, felt.budget)}`,
  noBudget: (feature: string, within: number) =>
    `${feature} within ${mm(within)}, as no tolerance budget can be drawn up`,
  guideSlot: (width: number, play: number) =>
    `width of the guide slot ${mm(width)}, at most ${mm(play)} wider than the pins`,
  pinHoles: (within: number) =>
    `distance of the two guide pin holes alike in base and packer within ${mm(within)}. The reamer, through both clamped together, takes as much off either side`,
  stop: 'width over the side faces within 0.1 mm, both ends alike. It stops the stroke: the bevel starts as much farther along the blade',
  seat: 'top flat',
  edges: 'long edges straight and parallel',
  parallel: 'belt and step faces straight and parallel',
} as const;
