import { inches } from '../core/units.ts';
import { text } from '../text/index.ts';

const { inBoth } = text.drawing;

/** A length (mm) with so many decimals and, where it is `wanted`, in inches too. */
export const lengthIn = (value: number, decimals: number, wanted = false): string => {
  const shown = value.toFixed(decimals);
  return wanted ? inBoth(shown, inches(value, decimals)) : shown;
};

/** A sentence with every length in inches too, as exactly as it tells it in millimetres. */
export const lengthsInBoth = (sentence: string): string =>
  sentence.replace(/(\d+)(\.\d+)? mm\b/g, (shown, whole: string, part = '') => {
    const decimals = String(part).length > 2 ? 2 : 1;
    return inBoth(shown, inches(Number(`${whole}${String(part)}`), decimals));
  });
