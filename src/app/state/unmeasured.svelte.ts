import { keptValues, sameMachine } from '../../adapt/kept-values.ts';
import type { Issue } from '../../core/issue.ts';
import { valueAt, type Path } from '../../core/path.ts';
import type { Design } from '../../document/schema.ts';
import type { FamilyCard } from '../../family/family.ts';
import type { Grinder } from '../../grinder/schema.ts';
import type { Preferences } from './view.svelte.ts';

/** A value as it was on the machine that it describes. */
interface Origin {
  readonly path: Path;
  readonly from: Grinder;
  readonly value: unknown;
}

const isOrigin = (one: unknown): one is Origin =>
  typeof valueAt(one, 'path') === 'string' && typeof valueAt(one, 'from.name') === 'string';

/** What was written of an entry; nothing where it cannot be read. */
const readOrigins = (written: string | null): readonly Origin[] => {
  try {
    const list: unknown = JSON.parse(written ?? '[]');
    return Array.isArray(list) ? list.filter(isOrigin) : [];
  } catch {
    return [];
  }
};

/**
 * Values on the board that describe a grinder which is no longer there. Each is warned of until it
 * is changed, its machine is back, or the warning is put away; it outlives the page, since whoever
 * measures goes away to the machine.
 */
export class Unmeasured {
  #origins: readonly Origin[] = $state.raw([]);
  readonly #board: () => Design | undefined;
  readonly #families: () => readonly FamilyCard[];
  readonly #memory: Preferences;
  /** The entry that is on the board. */
  #entry = '';

  /** A warning for each of these values as the board stands. */
  readonly issues: readonly Issue[] = $derived.by(() => {
    const design = this.#board();
    return design === undefined ? [] : this.#standing(design);
  });

  constructor(
    board: () => Design | undefined,
    families: () => readonly FamilyCard[],
    memory: Preferences,
  ) {
    this.#board = board;
    this.#families = families;
    this.#memory = memory;
  }

  #standing(design: Design): Issue[] {
    const families = Object.fromEntries(this.#families().map((card) => [card.id, card]));
    return this.#origins.flatMap(({ path, from, value }) =>
      valueAt(design, path) === value
        ? keptValues(from, design, { families }).filter((issue) => issue.path === path)
        : [],
    );
  }

  /** The design on the board is about to go on with another grinder. */
  onto(grinder: Grinder): void {
    const design = this.#board();
    if (design === undefined || sameMachine(design.grinder, grinder)) return;
    const { family } = design.fixture;
    const card = this.#families().find(({ id }) => id === family);
    const origins = Object.entries(card?.parameters ?? {}).flatMap(([key, { machine }]) => {
      if (machine === undefined) return [];
      const path = `fixture.parameters.${key}`;
      // One that was brought here already is from the machine before.
      const earlier = this.issues.some((issue) => issue.path === path)
        ? this.#origins.find((origin) => origin.path === path)
        : undefined;
      return [earlier ?? { path, from: design.grinder, value: valueAt(design, path) }];
    });
    this.#write(origins);
  }

  /** Whether this is one of these warnings, to be put away by hand. */
  has(issue: Issue): boolean {
    return this.issues.includes(issue);
  }

  /** The value was looked after, or does not matter. */
  putAway({ path }: Issue): void {
    this.#write(this.#origins.filter((origin) => origin.path !== path));
  }

  #write(origins: readonly Origin[]): void {
    this.#origins = origins;
    this.#keep(this.#entry, origins.length > 0 ? JSON.stringify(origins) : null);
  }

  #keep(entry: string, written: string | null): void {
    // Under its first name, so that what a browser holds from then is still found.
    this.#memory.set(`carried.${entry}`, written);
  }

  /** An entry was taken off the shelf, and what was written of it with it; the answer puts that back. */
  leave(entry: string): () => void {
    const written = this.#memory.get(`carried.${entry}`);
    this.#keep(entry, null);
    return () => this.#keep(entry, written);
  }

  /** Another entry is on the board: what was written of it holds again. */
  turnTo(entry: string): void {
    this.#entry = entry;
    this.#origins = readOrigins(this.#memory.get(`carried.${entry}`));
  }

  /** The board goes on under another entry, and all of this with it. */
  moveTo(entry: string): void {
    this.#entry = entry;
    if (this.#origins.length > 0) this.#write(this.#origins);
  }
}
