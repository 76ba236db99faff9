import type { SpineRestPlan } from '../../src/family/index.ts';

type Setting = SpineRestPlan['settings'][number];
type Place = Setting['blades'][number]['places'][number];

/** The greatest of a number over all places of all blades at some settings; -Infinity over none. */
export const greatestOver = (
  settings: readonly Setting[],
  numberOf: (place: Place) => number,
): number => {
  let most = -Infinity;
  for (const { blades } of settings)
    for (const { places } of blades)
      for (const place of places) most = Math.max(most, numberOf(place));
  return most;
};

/** The least of a number over all places of all blades at some settings; Infinity over none. */
export const leastOver = (
  settings: readonly Setting[],
  numberOf: (place: Place) => number,
): number => -greatestOver(settings, (place) => -numberOf(place));
