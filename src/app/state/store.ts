/** A design as it is kept in the browser. */
export interface Kept {
  readonly id: string;
  readonly name: string;
  /** Counts the writes of this entry; a writer must know the last one. */
  readonly revision: number;
  /** When it was written, ms since 1970. */
  readonly at: number;
  /** The design file's text. */
  readonly text: string;
}

export type KeptInfo = Omit<Kept, 'text'>;

/**
 * How a write ended: kept, refused because somebody else wrote in between, or refused by the
 * browser (storage full or forbidden).
 */
export type Written = 'kept' | 'overtaken' | 'refused';

/** Where designs are kept between visits. */
export interface Store {
  list(): Promise<readonly KeptInfo[]>;
  read(id: string): Promise<Kept | undefined>;
  /** Writes `entry` if the entry there still has revision `after` (0: there is none). */
  write(entry: Kept, after: number): Promise<Written>;
  remove(id: string): Promise<void>;
}

export const infoOf = ({ id, name, revision, at }: Kept): KeptInfo => ({ id, name, revision, at });

/** A store that lives as long as the page: for tests, and where the browser keeps nothing. */
export const memoryStore = (): Store => {
  const entries = new Map<string, Kept>();
  return {
    list: async () => [...entries.values()].map(infoOf),
    read: async (id) => entries.get(id),
    write: async (entry, after) => {
      if ((entries.get(entry.id)?.revision ?? 0) !== after) return 'overtaken';
      entries.set(entry.id, entry);
      return 'kept';
    },
    remove: async (id) => {
      entries.delete(id);
    },
  };
};
