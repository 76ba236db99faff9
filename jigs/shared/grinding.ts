/** A setting with the blades that are ground at it: a side that a blade leaves as it is has none. */
export interface Grinding {
  readonly id: string;
  readonly blades: readonly { readonly blade: string }[];
}

/** Whether a blade is ground at a setting at all; only then is there anything to check there. */
export const isGround =
  ({ blades }: Grinding) =>
  ({ name }: { readonly name: string }): boolean =>
    blades.some(({ blade }) => blade === name);

/** What is expected of a blade at the last setting that grinds it; nothing where none does. */
export const expectedOf = <Expected>(
  settings: readonly {
    readonly blades: readonly { readonly blade: string; readonly expected: readonly Expected[] }[];
  }[],
  name: string,
): readonly Expected[] =>
  settings.flatMap(({ blades }) => blades.filter(({ blade }) => blade === name)).at(-1)?.expected ??
  [];
