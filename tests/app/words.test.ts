import { describe, expect, it } from 'vitest';
import { words, wordsIn } from '../../src/app/panels/glossary.ts';
import { wordPictures } from '../../src/app/pictures/words.ts';
import { text } from '../../src/text/index.ts';

describe('the words of the glossary', () => {
  it('are found whole in a text, one or many, capital or not', () => {
    expect(wordsIn('Plate lips and a Push block; the noses')).toEqual(['lip', 'nose', 'pushBlock']);
    expect(wordsIn('slip, nosey, stepping')).toEqual([]);
    expect(wordsIn('Step to belt')).toEqual(['step', 'setoff']);
  });

  it('each have one meaning and a picture that stays in its frame', () => {
    for (const word of words) {
      const { term, meaning } = text.glossary[word];
      expect(words.filter((other) => text.glossary[other].term === term)).toHaveLength(1);
      expect(meaning, term).toMatch(/\.$/);
      const { around, thing } = wordPictures[word];
      expect(thing, term).not.toBe('');
      // Absolute commands only are held: a small letter starts what is relative.
      for (const [, x, y] of `${around}${thing}`.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)) {
        expect(Number(x), term).toBeGreaterThanOrEqual(0);
        expect(Number(x), term).toBeLessThanOrEqual(96);
        expect(Number(y), term).toBeGreaterThanOrEqual(0);
        expect(Number(y), term).toBeLessThanOrEqual(64);
      }
    }
  });
});
