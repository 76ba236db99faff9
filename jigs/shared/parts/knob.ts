import {
  circle,
  clearanceHole,
  cos,
  hexagon,
  nut,
  path,
  type PrintPart,
  radians,
  sin,
  tan,
  type Vertex,
} from '../../../src/family/index.ts';
import { DIVISIONS } from '../feed.ts';
import { FEED } from '../layout/sizes.ts';
import { THREAD } from '../layout/threads.ts';
import { printed, words, type Workshop } from './context.ts';

/** Rim with one notch a division, the one at zero wider and deeper. */
const rim = () => {
  const r = FEED.knobDiameter / 2;
  const point = (angle: number, radius: number, bulge = 0): Vertex => ({
    x: radius * sin(radians(angle)),
    y: radius * cos(radians(angle)),
    bulge,
  });
  const pitch = 360 / DIVISIONS;
  // Anticlockwise, starting at the zero notch at the top.
  const vertices = Array.from({ length: DIVISIONS }, (_, i) => {
    const at = -i * pitch;
    const [half, depth] = i === 0 ? [2.2, 1.6] : [1.3, 0.8];
    const next = i === DIVISIONS - 1 ? 2.2 : 1.3;
    const bulge = tan(radians(pitch - half - next) / 4);
    return [point(at + half, r), point(at, r - depth), point(at - half, r, bulge)];
  });
  return path(vertices.flat());
};

/** The knob: printed with its front down, the nut of the feed screw sunk in from the back. */
export const knob = (c: Workshop): PrintPart => {
  const { name, density, play } = printed(c);
  const bore = clearanceHole(THREAD.main, 'normal');
  const sunk = nut(THREAD.main, 'full');
  const outer = rim();
  const pocket = hexagon([0, 0], sunk.acrossFlats + play);
  const { knobWeb, knobThickness } = FEED;
  const hole = circle([0, 0], (bore.diameter + play) / 2);
  return {
    kind: 'print',
    id: 'knob',
    name: words.names.knob,
    quantity: 1,
    material: name,
    density,
    finish: words.finish.print,
    layers: [
      { profile: { outer, holes: [hole] }, from: 0, to: knobWeb },
      { profile: { outer, holes: [pocket] }, from: knobWeb, to: knobThickness },
    ],
    holes: [
      {
        id: 'bore',
        loop: hole,
        at: [0, 0],
        size: 2 * hole.radius,
        purpose: `${words.purpose.knobBore} (${bore.standard})`,
      },
    ],
    notes: [words.notes.knob, words.notes.knobHead, words.notes.printSolid],
    tight: [],
  };
};
