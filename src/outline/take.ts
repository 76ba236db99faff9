import type { Blade, Outline } from '../blade/schema.ts';
import { bladeLength } from '../blade/shape.ts';
import type { Traced } from './trace.ts';

/**
 * The blade with another outline. What lies behind the plunge becomes its tang, and the places at
 * which its thickness is stated keep their share of the length.
 */
export const withOutline = (blade: Blade, outline: Outline, traced: Traced): Blade => {
  const last = blade.thickness.at(-1)?.u ?? 0;
  const before = bladeLength(blade.outline);
  const share = before > 0 && last > 0 ? traced.length / before : 1;
  return {
    ...blade,
    outline,
    ricasso: 0,
    tang: { ...blade.tang, ...(traced.tang ?? {}) },
    thickness: blade.thickness.map(({ u, t }) => ({
      u: u > 0 ? Number(Math.min(traced.length, u * share).toFixed(2)) : Math.max(u, 0),
      t,
    })),
  };
};
