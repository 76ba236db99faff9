import type { FlatPiece, Quantity } from '../../src/setup/calibration/flat.ts';
import type { HollowPlace } from '../../src/setup/calibration/edge-rest.ts';
import { standardNormal, type Random } from '../../src/setup/random.ts';

/**
 * Test pieces ground by hidden fixtures and read with noise. The grinding is computed from the
 * textbook forms alone and shares nothing with the program.
 */
export interface Blind<Given> {
  readonly given: Given;
  /** What the program has to find. */
  readonly hidden: number;
}

const rad = Math.PI / 180;

const bisect = (f: (x: number) => number, low: number, high: number): number => {
  let [lo, hi] = [low, high];
  for (let i = 0; i < 80; i += 1) {
    const middle = (lo + hi) / 2;
    if (f(middle) < 0) lo = middle;
    else hi = middle;
  }
  return (lo + hi) / 2;
};

export const chance = (random: Random) => {
  const between = (from: number, to: number): number => from + (to - from) * random();
  const read = (truth: number, uncertainty: number): Quantity => ({
    value: truth + uncertainty * standardNormal(random),
    uncertainty,
  });
  return { between, read };
};

const labels = ['heel', 'middle', 'tip', 'heel again', 'tip again', 'sixth'];

/** Sharp bar on a square platen: s = (T/2 + e) cos a + H sin a and b = (T/2 - e) / tan a. */
export const spineBlind = (
  random: Random,
  places = 4,
): Blind<{ piece: FlatPiece; setoff: number }> => {
  const { between, read } = chance(random);
  const [T, H, hidden, e0] = [
    between(2, 5),
    between(35, 55),
    between(-0.3, 0.3),
    between(0.15, 0.3),
  ];
  const a0 = Math.atan((T / 2 - e0) / (between(0.35, 0.6) * H)) / rad;
  const setoff = (T / 2 + e0) * Math.cos(a0 * rad) + H * Math.sin(a0 * rad);
  const piece: FlatPiece = {
    thickness: { label: 'thickness', ...read(T, 0.01) },
    height: { label: 'height', ...read(H, 0.1) },
    spineRadius: 0,
    edges: 'across',
    places: labels.slice(0, places).map((label, i) => {
      const e = e0 + between(-0.1, 0.3);
      const short = (a: number): number =>
        (T / 2 + e) * Math.cos(a * rad) + H * Math.sin(a * rad) - (setoff + hidden);
      const a = bisect(short, 0.01, 40);
      return {
        label,
        edge: read(e + T / 2, 0.015),
        bevelHeight: read((T / 2 - e) / Math.tan(a * rad), 0.2),
        ...(i === 0 ? { angle: read(a, 0.1) } : {}),
      };
    }),
  };
  return { given: { piece, setoff }, hidden };
};

/** A carriage held at its angle: the face rises by tan a from the edge. */
export const carriageBlind = (
  random: Random,
  places = 4,
): Blind<{ piece: FlatPiece; angle: number }> => {
  const { between, read } = chance(random);
  const [T, angle] = [between(3, 6), between(5, 14)];
  const hidden = between(-0.8, 0.8);
  const piece: FlatPiece = {
    thickness: { label: 'thickness', ...read(T, 0.01) },
    height: { label: 'height', ...read(30, 0.1) },
    spineRadius: 0,
    edges: 'centreline',
    places: labels.slice(0, places).map((label) => {
      const e = between(0.1, 0.5);
      const rise = Math.sin((angle + hidden) * rad) / Math.cos((angle + hidden) * rad);
      return { label, edge: read(e, 0.02), bevelHeight: read((T / 2 - e) / rise, 0.15) };
    }),
  };
  return { given: { piece, angle }, hidden };
};

/** A wheel cutting a straight face: the circle's chord on that face, found by intersection. */
export const hollowBlind = (
  random: Random,
  places = 4,
): Blind<{
  places: HollowPlace[];
  radius: number;
  lip: number;
  drop: number;
  faceOffset: number;
}> => {
  const { between, read } = chance(random);
  const [radius, drop] = [between(75, 180), between(-10, 40)];
  const faceOffset = between(0, 1.5);
  const hidden = between(-0.3, 0.3);
  const [centre, depth0] = [between(15, 30), between(0.2, 0.5)];
  const apart0 = Math.hypot(radius - depth0 + faceOffset, centre);
  const lip = Math.sqrt(apart0 ** 2 - drop ** 2) - radius;
  // The edge contact at (lip + hidden, 0), the wheel's middle at (-radius, drop).
  const apart = Math.hypot(lip + hidden + radius, drop);
  const read4 = labels.slice(0, places).map((label): HollowPlace => {
    const depth = depth0 + between(-0.08, 0.15);
    // Tip the blade until the face's line passes radius - depth from the middle: in the frame of
    // the face (edge at 0, line at -q) the middle stands at (x, c).
    const x = radius - depth + faceOffset;
    const c = bisect((v) => v * v + x * x - apart * apart, 0, 200);
    const half = bisect((h) => (x - faceOffset) ** 2 + h * h - radius * radius, 0, 100);
    return {
      label,
      depth: read(depth, 0.01),
      lower: read(c - half, 0.25),
      upper: read(c + half, 0.25),
    };
  });
  return { given: { places: read4, radius, lip, drop, faceOffset }, hidden };
};
