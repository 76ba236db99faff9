import { draw, type Contributor } from './contributor.ts';
import type { Random } from '../random.ts';

/** Departures from nominal of every contributor on one side, by id. */
export type Departures<Id extends string = string> = Readonly<Record<Id, number>>;

/** One independent input: a contributor, or what it does to one side alone. */
export interface Input<Id extends string = string> {
  readonly contributor: Contributor<Id>;
  readonly side: 'first' | 'second' | undefined;
}

/** The independent inputs: contributors that act on each side anew count twice. */
export const inputsOf = <Id extends string>(
  contributors: readonly Contributor<Id>[],
): Input<Id>[] =>
  contributors.flatMap((contributor): Input<Id>[] =>
    contributor.acts === 'each'
      ? [
          { contributor, side: 'first' },
          { contributor, side: 'second' },
        ]
      : [{ contributor, side: undefined }],
  );

/** What inputs that depart by `values` do on a side, nominal values included. */
export const departuresOn = <Id extends string>(
  inputs: readonly Input<Id>[],
  values: readonly number[],
  side: 'first' | 'second',
): Departures<Id> => {
  // Filled in place: a simulation asks this twice for every draw, and lists took longer than models.
  const on: Record<string, number> = {};
  for (let i = 0; i < inputs.length; i += 1) {
    const { contributor, side: only } = inputs[i] as Input<Id>;
    if (only !== undefined && only !== side) continue;
    const { id, nominal, acts } = contributor;
    const turned = acts === 'opposite' && side === 'second' ? -1 : 1;
    on[id] = nominal + turned * (values[i] ?? 0);
  }
  return on as Departures<Id>;
};

/** A chance departure of every input. */
export const drawn = (inputs: readonly Input[], random: Random): number[] =>
  inputs.map(({ contributor }) => draw(contributor, random));
