/** A place in a document, as issues name it: `blades.0.edge.wanted`. */
export type Path = string;

type Container = Readonly<Record<string, unknown>> | readonly unknown[];

const isContainer = (value: unknown): value is Container =>
  typeof value === 'object' && value !== null;

const child = (value: unknown, key: string): unknown =>
  isContainer(value) && Object.hasOwn(value, key)
    ? (value as Readonly<Record<string, unknown>>)[key]
    : undefined;

/** The value at a path, undefined where there is none. */
export const valueAt = (root: unknown, path: Path): unknown =>
  path === '' ? root : path.split('.').reduce(child, root);

const replace = (root: unknown, keys: readonly string[], value: unknown): unknown => {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  const next = replace(child(root, key), rest, value);
  if (Object.is(next, child(root, key))) return root;
  if (Array.isArray(root)) return root.with(Number(key), next);
  return { ...(isContainer(root) ? root : {}), [key]: next };
};

/**
 * The root with another value at a path; everything beside the path is shared, and the root
 * itself is returned when nothing changes. An array must already hold the index.
 */
export const withValue = <T>(root: T, path: Path, value: unknown): T =>
  replace(root, path === '' ? [] : path.split('.'), value) as T;
