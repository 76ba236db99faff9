/** How lengths are shown. Stored values are millimetres whatever is chosen here. */
export type Display = 'mm' | 'inch' | 'fraction';

export const DISPLAYS: readonly Display[] = ['mm', 'inch', 'fraction'];
