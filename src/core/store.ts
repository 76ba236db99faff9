/** Values by key, each made when it is asked for and not kept. */
export type Store<T> = (key: string, make: () => T) => T;

/**
 * Keeps what was asked for lately: the last `limit` keys at least, twice as many at most. Keys must
 * name everything that a value is made from, so that keeping changes no result.
 */
export const createStore = <T>(limit: number): Store<T> => {
  let recent = new Map<string, { readonly value: T }>();
  let before = new Map<string, { readonly value: T }>();
  return (key, make) => {
    const known = recent.get(key);
    if (known) return known.value;
    const kept = before.get(key) ?? { value: make() };
    if (recent.size >= limit) {
      before = recent;
      recent = new Map();
    }
    recent.set(key, kept);
    return kept.value;
  };
};
