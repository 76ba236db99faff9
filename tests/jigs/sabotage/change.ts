import type { Design } from '../../../src/document/schema.ts';
import type { Part } from '../../../src/model/part.ts';
import { beltSpeed } from '../../../src/grinder/belt-speed.ts';

/** A design whose belt runs so much faster. */
export const faster = (design: Design, by: number): Design => {
  const { drive } = design.grinder;
  const speed = beltSpeed(design.grinder);
  const shaftSpeed = (drive.shaftSpeed * (speed + by)) / speed;
  return { ...design, grinder: { ...design.grinder, drive: { ...drive, shaftSpeed } } };
};

export const withPart = (
  parts: readonly Part[],
  id: string,
  change: (part: Part) => Part,
): readonly Part[] => parts.map((part) => (part.id === id ? change(part) : part));

/** A plate with its slots of a name longer by so much. */
export const slotsBy =
  (prefix: string, by: number) =>
  (part: Part): Part =>
    part.kind === 'plate'
      ? {
          ...part,
          holes: part.holes.map((hole) =>
            hole.slotLength !== undefined && hole.id.startsWith(prefix)
              ? { ...hole, slotLength: hole.slotLength + by }
              : hole,
          ),
        }
      : part;

/** A part with the corners of its outlines moved. */
export const corners =
  (move: (x: number, y: number) => readonly [number, number]) =>
  (part: Part): Part => ({
    ...part,
    layers: part.layers.map((layer) => {
      const { outer } = layer.profile;
      if (outer.kind !== 'path') return layer;
      const vertices = outer.vertices.map((vertex) => {
        const [x, y] = move(vertex.x, vertex.y);
        return { ...vertex, x, y };
      });
      return { ...layer, profile: { ...layer.profile, outer: { ...outer, vertices } } };
    }),
  });

/** A part whose outline ends so much lower than it does, or higher. */
export const topped =
  (by: number) =>
  (part: Part): Part => {
    const { outer } = part.layers[0]?.profile ?? {};
    const top = outer?.kind === 'path' ? Math.max(...outer.vertices.map(({ y }) => y)) : NaN;
    return corners((x, y) => [x, y > top + Math.min(by, -1e-9) ? top + by : y])(part);
  };

/** A push stick whose nose ends so much farther from its stop. */
export const nosed =
  (by: number) =>
  (part: Part): Part => {
    const { outer } = part.layers[0]?.profile ?? {};
    const nose = outer?.kind === 'path' ? Math.min(...outer.vertices.map(({ x }) => x)) : NaN;
    return corners((x, y) => [x < nose + Math.max(-by, 1e-9) ? nose - by : x, y])(part);
  };
