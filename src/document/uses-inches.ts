import type { Design } from './schema.ts';

/** Whether the maker of a design measures in inches: their sheets, or files to cut, are in them. */
export const usesInches = ({ making }: Design): boolean =>
  making.units === 'in' || making.plates.inches === 'beside';
