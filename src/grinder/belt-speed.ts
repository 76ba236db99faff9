import type { Grinder } from './schema.ts';

/**
 * Surface speed of the belt, m/s, from the shaft's speed (1/min) and the diameter of the drive
 * wheel (mm): v = pi D n. The belt's own thickness is left out, as is usual.
 */
export const surfaceSpeed = (diameter: number, shaftSpeed: number): number =>
  (Math.PI * diameter * shaftSpeed) / 60_000;

export const beltSpeed = ({ drive }: Grinder): number =>
  surfaceSpeed(drive.pulleyDiameter, drive.shaftSpeed);
