/** Standard hardware: tables with the standard of each row, and bought pieces as parts. */
export * from './materials.ts';
export * from './nuts.ts';
export * from './parts.ts';
export * from './pins.ts';
export * from './screws.ts';
export * from './seats.ts';
export * from './threads.ts';
