import {
  circle,
  clearanceHole,
  slot,
  tapDrill,
  type Hole,
  type Thread,
  type Vec2,
} from '../../../src/family/index.ts';

/** Holes of a plate in its own coordinates, numbered by kind and place: "nose-1". */
const named = (id: string, at: readonly Vec2[], make: (id: string, at: Vec2) => Hole): Hole[] =>
  at.map((p, i) => make(at.length === 1 ? id : `${id}-${String(i + 1)}`, p));

export const tapped = (id: string, at: readonly Vec2[], thread: Thread, purpose: string): Hole[] =>
  named(id, at, (name, p) => {
    const { diameter, standard } = tapDrill(thread);
    return {
      id: name,
      loop: circle(p, diameter / 2),
      at: p,
      size: diameter,
      thread,
      purpose: `${purpose} (${standard})`,
    };
  });

export const passage = (
  id: string,
  at: readonly Vec2[],
  thread: Thread,
  purpose: string,
  fit: 'close' | 'normal' | 'loose' = 'normal',
): Hole[] =>
  named(id, at, (name, p) => {
    const { diameter, standard } = clearanceHole(thread, fit);
    return {
      id: name,
      loop: circle(p, diameter / 2),
      at: p,
      size: diameter,
      purpose: `${purpose} (${standard})`,
    };
  });

export const round = (id: string, at: readonly Vec2[], diameter: number, purpose: string): Hole[] =>
  named(id, at, (name, p) => ({
    id: name,
    loop: circle(p, diameter / 2),
    at: p,
    size: diameter,
    purpose,
  }));

/** Slots along y about each place, `travel` to either side of it. */
export const slots = (
  id: string,
  at: readonly Vec2[],
  travel: number,
  width: number,
  purpose: string,
): Hole[] =>
  named(id, at, (name, [x, y]) => ({
    id: name,
    loop: slot([x, y - travel], [x, y + travel], width),
    at: [x, y],
    size: width,
    slotLength: 2 * travel + width,
    purpose,
  }));
