import { createStore } from '../core/store.ts';
import { sectionItems, type Section } from './belt-section.ts';
import { heightOf, widthOf } from './box.ts';
import { bounds, move, TEXT } from './items.ts';
import { paragraph, type Strip } from './layout.ts';
import type { Item } from './sheet.ts';

/** Room for words and dimensions above and below a picture, mm. */
const AROUND = 36;
/** Sizes at which a picture is tried, from three times its natural one, each a twelfth smaller. */
const SIZES = Array.from({ length: 55 }).reduce<number[]>(
  (sizes) => [...sizes, 0.92 * (sizes.at(-1) ?? 3 / 0.92)],
  [],
);
/** After so many of them the one that leaves out least is taken. */
const TRIES = 25;

/** What is written in a picture: where it finds no room for a word the word is left out. */
const written = (items: readonly Item[]): number =>
  items.filter(({ kind }) => kind === 'text').length;

/**
 * A section no wider than its place, by the height it may have without its words: as large as it
 * can be with every word in it. It shows what is measured where, and is not to scale.
 */
export const pictured = (shown: Section, width: number): ((height: number) => Strip[]) => {
  const drawn = createStore<Item[]>(2 * TRIES);
  const bare = bounds(sectionItems({ ...shown, dimensions: [] }, 1));
  const title = paragraph(shown.title, width, { bold: true, keep: true, tight: true });
  return (height) => {
    const most = Math.min(width / widthOf(bare), height / heightOf(bare));
    const sizes = SIZES.filter((size) => size <= most).slice(0, TRIES);
    // Where no size has room for a word, the picture stands without any.
    let items: readonly Item[] = sectionItems({ ...shown, dimensions: [] }, most);
    for (const size of sizes) {
      if (written(items) >= shown.dimensions.length) break;
      const tried = drawn(String(size), () => sectionItems(shown, size, TEXT.small));
      const taken = bounds(tried);
      const fits = widthOf(taken) <= width && heightOf(taken) <= height + AROUND;
      if (fits && written(tried) > written(items)) items = tried;
    }
    const box = bounds(items);
    const placed = move(items, [(width - box.x0 - box.x1) / 2, -box.y1 - 1]);
    return [title, { height: heightOf(box) + 2, items: placed, keep: false }];
  };
};
