import type { Random } from '../../src/setup/random.ts';

const index = (random: Random, length: number): number => Math.floor(random() * length);

/** Text that a format could take for its own. */
const HOSTILE = [
  '</metadata><script>alert(1)</script>',
  '"__proto__":{"polluted":true},',
  '\u0000\u0007\u001b',
  '9'.repeat(400),
  '1e999',
  '-0',
  'null',
  '[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[',
  '../../../../etc/passwd',
  '  0\nSECTION\n',
  '%PDF-1.7\ntrailer',
  'platenwright-design:',
  '\ud800',
] as const;

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

const joined = (...pieces: readonly Uint8Array[]): Uint8Array => {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
};

type Change = (random: Random, bytes: Uint8Array) => Uint8Array;

const flip: Change = (random, bytes) => {
  const changed = Uint8Array.from(bytes);
  for (let n = 1 + index(random, 8); n > 0; n -= 1)
    changed[index(random, changed.length)] = index(random, 256);
  return changed;
};

const cutShort: Change = (random, bytes) => bytes.subarray(0, index(random, bytes.length));

const dropMiddle: Change = (random, bytes) => {
  const from = index(random, bytes.length);
  return joined(bytes.subarray(0, from), bytes.subarray(from + 1 + index(random, 200)));
};

const insert: Change = (random, bytes) => {
  const at = index(random, bytes.length);
  const what = bytesOf(HOSTILE[index(random, HOSTILE.length)] ?? '');
  return joined(bytes.subarray(0, at), what, bytes.subarray(at));
};

const repeat: Change = (random, bytes) => {
  const from = index(random, bytes.length);
  const piece = bytes.subarray(from, from + 1 + index(random, 4000));
  const times = 1 + index(random, 60);
  const copies = Array.from({ length: times }, () => piece);
  return joined(bytes.subarray(0, from), ...copies, bytes.subarray(from));
};

/** One number of a text exchanged for one that is out of range, or close to it. */
const renumber: Change = (random, bytes) => {
  const text = new TextDecoder('latin1').decode(bytes);
  const numbers = [...text.matchAll(/-?\d+(?:\.\d+)?/g)];
  const found = numbers[index(random, numbers.length)];
  if (found === undefined) return flip(random, bytes);
  const values = ['-1', '0', '1e308', '1e-308', '99999999', '0.1', '-0', '1e999', '2147483648'];
  const value = values[index(random, values.length)] ?? '0';
  return joined(
    bytes.subarray(0, found.index),
    bytesOf(value),
    bytes.subarray(found.index + found[0].length),
  );
};

const CHANGES: readonly Change[] = [flip, cutShort, dropMiddle, insert, repeat, renumber];

/** A file damaged in one to three ways; the same generator gives the same file. */
export const mutated = (random: Random, bytes: Uint8Array): Uint8Array => {
  let changed = bytes;
  for (let n = 1 + index(random, 3); n > 0; n -= 1) {
    const change = CHANGES[index(random, CHANGES.length)];
    if (change && changed.length > 0) changed = change(random, changed);
  }
  return changed;
};
