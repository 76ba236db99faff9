import type { Loop } from '../geometry/loop.ts';
import { segments, type Segment } from '../geometry/segment.ts';
import type { Layer } from '../model/part.ts';
import { covers, cutAt, edgeItem, loopItems, loopsOf, middleOf, touches } from './edges.ts';
import type { Item } from './sheet.ts';

const EPS = 1e-6;

const same = (one: Loop, other: Loop): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What lies over an edge seen from above: nothing, material, or another edge drawn there. */
const sight = (edge: Segment, above: readonly Layer[]): 'visible' | 'hidden' | 'covered' => {
  const p = middleOf(edge);
  if (above.some((layer) => touches(layer.profile, p))) return 'covered';
  return above.some((layer) => covers(layer.profile, p)) ? 'hidden' : 'visible';
};

/**
 * The view of a stack from above as items around the part's origin, `k` times as large: visible
 * edges, and dashed those of lower layers under material. An edge under another edge is left
 * out, so no hidden line coincides with a visible one. Contours wholly in sight stay whole.
 */
export const planItems = (layers: readonly Layer[], k: number): Item[] => {
  const downwards = [...layers].sort((a, b) => b.to - a.to);
  const drawn: Loop[] = [];
  const items: Item[] = [];
  const hidden: Item[] = [];
  for (const layer of downwards) {
    const above = downwards.filter((other) => other.from >= layer.to - EPS);
    const contours = above.flatMap((other) => loopsOf(other.profile));
    for (const loop of loopsOf(layer.profile)) {
      if (drawn.some((other) => same(other, loop))) continue;
      drawn.push(loop);
      const pieces = segments(loop)
        .flatMap((segment) => cutAt(segment, contours))
        .map((edge) => ({ edge, seen: sight(edge, above) }));
      const first = pieces[0]?.seen;
      if (first !== undefined && pieces.every((piece) => piece.seen === first)) {
        if (first === 'visible') items.push(...loopItems(loop, k, 'visible'));
        if (first === 'hidden') hidden.push(...loopItems(loop, k, 'hidden'));
        continue;
      }
      for (const { edge, seen } of pieces) {
        if (seen === 'visible') items.push(edgeItem(edge, k, 'visible'));
        if (seen === 'hidden') hidden.push(edgeItem(edge, k, 'hidden'));
      }
    }
  }
  return [...hidden, ...items];
};
