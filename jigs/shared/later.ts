/** A value that is computed when first asked for. */
export const later = <T>(make: () => T): (() => T) => {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** Answers by name or number, each computed when first asked for. */
export const byKey = <K extends string | number, T>(make: (key: K) => T): ((key: K) => T) => {
  const made = new Map<K, { readonly value: T }>();
  return (key) => {
    const known = made.get(key) ?? { value: make(key) };
    made.set(key, known);
    return known.value;
  };
};
