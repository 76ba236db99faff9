import type { Design } from '../document/schema.ts';

type Part = Readonly<Record<string, unknown>>;

const partOf = (value: unknown): Part =>
  typeof value === 'object' && value !== null ? { ...value } : {};

/** A part with what the other holds under this key, or without it where that holds nothing. */
const withKey = (mine: Part, theirs: Part, key: string): Part =>
  key in theirs
    ? { ...mine, [key]: theirs[key] }
    : Object.fromEntries(Object.entries(mine).filter(([other]) => other !== key));

/**
 * The first design with one area taken from the second, as `differences` names areas: a blade of
 * its own name, a parameter of the fixture, a group of the grinder. Both may hold, and this not: it
 * is to be opened as a design file is.
 */
export const withArea = (from: Design, to: Design, area: string): unknown => {
  const [head = '', key, name = ''] = area.split('.');
  const [a, b] = [partOf(from), partOf(to)];
  if (key === undefined) return withKey(a, b, head);
  if (head === 'blades') {
    const blade = area.slice('blades.'.length);
    const other = to.blades.find((one) => one.name === blade);
    const kept = from.blades.flatMap((one) => (one.name === blade ? (other ?? []) : one));
    const added = other && !from.blades.some((one) => one.name === blade) ? [other] : [];
    return { ...a, blades: [...kept, ...added] };
  }
  if (head === 'fixture' && key === 'parameters') {
    const parameters = withKey(from.fixture.parameters, to.fixture.parameters, name);
    return { ...a, fixture: { ...from.fixture, parameters } };
  }
  return { ...a, [head]: withKey(partOf(a[head]), partOf(b[head]), key) };
};
