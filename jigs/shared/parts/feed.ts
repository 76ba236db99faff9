import {
  clearanceHole,
  type CrossHole,
  materialOf,
  path,
  type StockPart,
  tan,
  tapDrill,
  type Thread,
  type Vec2,
} from '../../../src/family/index.ts';
import { FEED } from '../layout/sizes.ts';
import { THREAD } from '../layout/threads.ts';
import { words, type Context } from './context.ts';

/** Section of the equal angle: foot along x, leg along y, root rounded, toes left sharp. */
const angleSection = () => {
  const { leg, wall, root } = FEED;
  return path([
    { x: 0, y: 0, bulge: 0 },
    { x: leg, y: 0, bulge: 0 },
    { x: leg, y: wall, bulge: 0 },
    { x: wall + root, y: wall, bulge: -tan(Math.PI / 8) },
    { x: wall, y: wall + root, bulge: 0 },
    { x: wall, y: leg, bulge: 0 },
    { x: 0, y: leg, bulge: 0 },
  ]);
};

const crossHole = (
  id: string,
  face: 'x' | 'y',
  at: Vec2,
  thread: Thread,
  isTapped: boolean,
  purpose: string,
): CrossHole => {
  const { diameter, standard } = isTapped ? tapDrill(thread) : clearanceHole(thread, 'normal');
  return {
    id,
    face,
    at,
    size: diameter,
    depth: 'through',
    purpose: `${purpose} (${standard})`,
    ...(isTapped ? { thread } : {}),
  };
};

/** A length of angle: two screws through the foot, the feed screw through the leg. */
const angle = (
  id: string,
  name: string,
  half: number,
  screwX: number,
  screw: { thread: Thread; purpose: string },
  bolt: CrossHole,
  notes: readonly string[],
): StockPart => {
  const { name: material, density } = materialOf('steel');
  const foot = [half - screwX, half + screwX].map((along, i) =>
    crossHole(
      `screw-${String(i + 1)}`,
      'y',
      [FEED.leg / 2, along],
      screw.thread,
      false,
      screw.purpose,
    ),
  );
  return {
    kind: 'stock',
    id,
    name,
    quantity: 1,
    material,
    density,
    finish: words.finish.stock,
    section: words.angleSection(FEED.leg, FEED.wall),
    layers: [{ profile: { outer: angleSection(), holes: [] }, from: 0, to: 2 * half }],
    holes: [],
    crossHoles: [...foot, bolt],
    notes: [words.notes.angle, ...notes],
    tight: [],
  };
};

/** The bracket on the packer; its leg is the feed nut. */
export const bracket = ({ l }: Context): StockPart => {
  const { bracketHalf, bracketScrewX, axisZ } = l.feed;
  const screw = { thread: THREAD.main, purpose: words.purpose.bracketPassage };
  const bolt = crossHole(
    'feed',
    'x',
    [axisZ, bracketHalf],
    THREAD.main,
    true,
    words.purpose.feedNut,
  );
  const notes = [words.notes.scribe];
  return angle('feed-bracket', words.names.bracket, bracketHalf, bracketScrewX, screw, bolt, notes);
};

/** The lug on the rear of the step, in which the feed screw turns. */
export const lug = ({ l }: Context): StockPart => {
  const { lugHalf, lugScrewX } = l.feed;
  const screw = { thread: THREAD.lug, purpose: words.purpose.lugPassage };
  const bolt = crossHole(
    'feed',
    'x',
    [FEED.axis, lugHalf],
    THREAD.main,
    false,
    words.purpose.feedPassage,
  );
  return angle('feed-lug', words.names.lug, lugHalf, lugScrewX, screw, bolt, []);
};
