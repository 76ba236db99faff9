/** Round constants and start values: fractional parts of roots of primes (FIPS 180-4, 4.2.2, 5.3.3). */
const primes = Array.from({ length: 312 }, (_, n) => n).filter(
  (n) => n > 1 && !Array.from({ length: n - 2 }, (_, d) => d + 2).some((d) => n % d === 0),
);
const fraction = (root: number): number => Math.floor((root % 1) * 2 ** 32);
const K = Int32Array.from(primes.slice(0, 64), (prime) => fraction(Math.cbrt(prime)));
const START = primes.slice(0, 8).map((prime) => fraction(Math.sqrt(prime)));

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

/** The message padded to whole blocks: a one bit, zeros, and its length in bits (5.1.1). */
const padded = (message: Uint8Array): DataView => {
  const bytes = new Uint8Array(Math.ceil((message.length + 9) / 64) * 64);
  bytes.set(message);
  bytes[message.length] = 0x80;
  const view = new DataView(bytes.buffer);
  view.setBigUint64(bytes.length - 8, BigInt(message.length) * 8n);
  return view;
};

/** The 64 words of a block's schedule (6.2.2, step 1). */
const schedule = (w: Int32Array, view: DataView, block: number): void => {
  for (let t = 0; t < 16; t += 1) w[t] = view.getInt32(block + 4 * t);
  for (let t = 16; t < 64; t += 1) {
    const far = w[t - 15] ?? 0;
    const near = w[t - 2] ?? 0;
    const s0 = turned(far, 7) ^ turned(far, 18) ^ (far >>> 3);
    const s1 = turned(near, 17) ^ turned(near, 19) ^ (near >>> 10);
    w[t] = (w[t - 16] ?? 0) + s0 + (w[t - 7] ?? 0) + s1;
  }
};

/** SHA-256 of bytes as lower-case hexadecimal (FIPS 180-4), computed without the platform. */
export const sha256 = (message: Uint8Array): string => {
  const view = padded(message);
  const hash = Int32Array.from(START);
  const w = new Int32Array(64);
  for (let block = 0; block < view.byteLength; block += 64) {
    schedule(w, view, block);
    // Word by word: taking the eight apart as a list takes several times as long.
    let a = hash[0] ?? 0;
    let b = hash[1] ?? 0;
    let c = hash[2] ?? 0;
    let d = hash[3] ?? 0;
    let e = hash[4] ?? 0;
    let f = hash[5] ?? 0;
    let g = hash[6] ?? 0;
    let h = hash[7] ?? 0;
    for (let t = 0; t < 64; t += 1) {
      const s1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
      const first = (h + s1 + ((e & f) ^ (~e & g)) + (K[t] ?? 0) + (w[t] ?? 0)) | 0;
      const s0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
      const second = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      h = g;
      g = f;
      f = e;
      e = (d + first) | 0;
      d = c;
      c = b;
      b = a;
      a = (first + second) | 0;
    }
    hash[0] = (hash[0] ?? 0) + a;
    hash[1] = (hash[1] ?? 0) + b;
    hash[2] = (hash[2] ?? 0) + c;
    hash[3] = (hash[3] ?? 0) + d;
    hash[4] = (hash[4] ?? 0) + e;
    hash[5] = (hash[5] ?? 0) + f;
    hash[6] = (hash[6] ?? 0) + g;
    hash[7] = (hash[7] ?? 0) + h;
  }
  return [...hash].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
};
