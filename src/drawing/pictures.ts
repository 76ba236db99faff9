import { scale2 } from '../geometry/vector.ts';
import type { Part, Placement } from '../model/part.ts';
import { balloons, seenIn, type Pointer } from './balloons.ts';
import { bodiesOf, pathBody, type Body } from './bodies.ts';
import type { Box } from './box.ts';
import { explode } from './explode.ts';
import { scaled } from './items.ts';
import type { Eye } from './eye.ts';
import { scene } from './scene.ts';
import type { Item } from './sheet.ts';

/** An item of the parts list with the placements that are it. */
export interface Numbered {
  readonly item: string;
  readonly placed: ReadonlySet<string>;
}

/** Space between lifted parts, mm. */
const LIFT = 8;

/** A picture at full size with the places its item numbers point to; drawn at any scale. */
export interface Picture {
  readonly items: readonly Item[];
  readonly box: Box;
  readonly pointers: readonly Pointer[];
}

export const pictureOf = (
  bodies: readonly Body[],
  eye: Eye,
  rows: readonly Numbered[],
): Picture => {
  const view = scene(bodies, eye, 1);
  const seen = seenIn(view);
  const pointers = rows.flatMap(({ item, placed }) => {
    const at = seen(placed);
    return at ? [{ text: item, at }] : [];
  });
  return { items: view.items, box: view.box, pointers };
};

export const atScale = ({ items, box, pointers }: Picture, k: number): Picture => ({
  items: scaled(items, k),
  box: { x0: box.x0 * k, y0: box.y0 * k, x1: box.x1 * k, y1: box.y1 * k },
  pointers: pointers.map(({ text, at }) => ({ text, at: scale2(at, k) })),
});

/** Parts drawn apart, from one side; `numbered` are those that are shown with their numbers. */
export const explodedFrom = (
  parts: readonly Part[],
  placements: readonly Placement[],
  axis: 'x' | 'z',
): ((eye: Eye, numbered: readonly Numbered[]) => Picture) => {
  const lifted = explode(parts, placements, LIFT, axis);
  const bodies = bodiesOf(
    parts,
    lifted.map((l) => l.placement),
  );
  const paths = lifted
    .filter(({ path: [a, b] }) => a[0] + a[2] - b[0] - b[2] > 1e-6)
    .map(({ placement, path }) => pathBody(placement.name, path));
  return (eye, numbered) => pictureOf([...bodies, ...paths], eye, numbered);
};

/** The picture with its item numbers around it, drawn at any scale. */
export const withNumbers =
  (picture: Picture): ((k: number) => Item[]) =>
  (k) => {
    const { items, box, pointers } = atScale(picture, k);
    return [...items, ...balloons(pointers, box)];
  };
