/** A value that is computed when first asked for. */
export const later = <T>(make: () => T): (() => T) => {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
};

/** Answers by name, each computed when first asked for. */
export const byName = <T>(make: (name: string) => T): ((name: string) => T) => {
  const made = new Map<string, { readonly value: T }>();
  return (name) => {
    const known = made.get(name) ?? { value: make(name) };
    made.set(name, known);
    return known.value;
  };
};
