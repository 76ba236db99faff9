import type { Blade, Outline } from './schema.ts';
import { bladeLength } from './shape.ts';

const scaledOutline = (outline: Outline, k: number): Outline => {
  if (outline.kind === 'curves') {
    const points = (list: typeof outline.spine) =>
      list.map(([u, v]): [number, number] => [
        Number((u * k).toFixed(4)),
        Number((v * k).toFixed(4)),
      ]);
    return { ...outline, spine: points(outline.spine), edge: points(outline.edge) };
  }
  const to = (value: number): number => Number((value * k).toFixed(2));
  return {
    ...outline,
    length: to(outline.length),
    heelHeight: to(outline.heelHeight),
    bellyStart: to(outline.bellyStart),
    bellyHeight: to(outline.bellyHeight),
    spineDropStart: to(outline.spineDropStart),
    tipDrop: to(outline.tipDrop),
    ...(outline.spineSagitta === undefined ? {} : { spineSagitta: to(outline.spineSagitta) }),
  };
};

/**
 * The blade with the same outline at another length, mm: heights and the places along it go with
 * it. Thickness, edge, bevels and the sizes of the tang stay: they are of the stock and the hand.
 */
export const scaledTo = (blade: Blade, length: number): Blade => {
  const k = length / bladeLength(blade.outline);
  const to = (value: number): number => Number((value * k).toFixed(2));
  return {
    ...blade,
    outline: scaledOutline(blade.outline, k),
    tang: { ...blade.tang, drop: to(blade.tang.drop) },
    thickness: blade.thickness.map(({ u, t }) => ({ u: to(u), t })),
  };
};
