/** Names under which belt and blade can be hidden; parts have their ids. */
export const BELT_NAME = 'belt:';
export const BLADE_NAME = 'blade:';
