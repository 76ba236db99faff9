import { plain } from '../../core/units.ts';

/** Millimetres as a person reads them: up to three decimals. */
export const mm = (value: number): string => `${plain(value, 3)} mm`;

/** Degrees as a person reads them: up to three decimals. */
export const deg = (value: number): string => `${plain(value, 3)} degrees`;
