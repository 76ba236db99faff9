import type { Field } from '../field.ts';

/**
 * Volume between the two faces over the blade's own outline, mm^3: in each column the trapezium
 * rule across the blade, then along it. It is exact for the solid through the columns' polygons
 * up to the product of outline and face changing together.
 */
export const volumeOf = ({ us, rows, v, left, right }: Field): number => {
  const area = (i: number): number => {
    let sum = 0;
    for (let k = i * rows + 1; k < (i + 1) * rows; k += 1) {
      const dv = (v[k] ?? 0) - (v[k - 1] ?? 0);
      const thick = (left[k] ?? 0) + (right[k] ?? 0) + (left[k - 1] ?? 0) + (right[k - 1] ?? 0);
      sum += (dv * thick) / 2;
    }
    return sum;
  };
  let volume = 0;
  let last = us.length > 0 ? area(0) : 0;
  for (let i = 1; i < us.length; i += 1) {
    const next = area(i);
    volume += ((last + next) / 2) * ((us[i] ?? 0) - (us[i - 1] ?? 0));
    last = next;
  }
  return volume;
};
