/** First 32 bits of the fractional parts of the cube roots of the first 64 primes, and of the square roots of the first eight. */
const [ROUND, START] = (() => {
  const primes: number[] = [];
  for (let n = 2; primes.length < 64; n++) if (primes.every((p) => n % p !== 0)) primes.push(n);
  const fraction = (x: number): number => ((x - Math.floor(x)) * 2 ** 32) | 0;
  return [primes.map((p) => fraction(Math.cbrt(p))), primes.slice(0, 8).map((p) => fraction(Math.sqrt(p)))];
})();

const BLOCK = 64;

/** The message with a 1 bit, zeros, and its length in bits behind it, in whole blocks. */
function padded(message: Uint8Array): DataView {
  const bytes = new Uint8Array(Math.ceil((message.length + 9) / BLOCK) * BLOCK);
  bytes.set(message);
  bytes[message.length] = 0x80;
  const view = new DataView(bytes.buffer);
  view.setUint32(bytes.length - 8, Math.floor(message.length / 2 ** 29));
  view.setUint32(bytes.length - 4, (message.length << 3) >>> 0);
  return view;
}

const turned = (word: number, by: number): number => (word >>> by) | (word << (32 - by));

function scheduleOf(view: DataView, offset: number): Int32Array {
  const w = new Int32Array(BLOCK);
  for (let i = 0; i < 16; i++) w[i] = view.getInt32(offset + 4 * i);
  for (let i = 16; i < BLOCK; i++) {
    const [a, b] = [w[i - 15], w[i - 2]];
    const low = turned(a, 7) ^ turned(a, 18) ^ (a >>> 3);
    const high = turned(b, 17) ^ turned(b, 19) ^ (b >>> 10);
    w[i] = w[i - 16] + low + w[i - 7] + high;
  }
  return w;
}

/** One block taken into the eight words of the state. */
function compress(state: Int32Array, view: DataView, offset: number): void {
  const w = scheduleOf(view, offset);
  let [a, b, c, d, e, f, g, h] = state;
  for (let i = 0; i < BLOCK; i++) {
    const one = h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + ROUND[i] + w[i];
    const two = (turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + one) | 0, c, b, a, (one + two) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((word, i) => {
    state[i] += word;
  });
}

/** Bytes of a character by UTF-8 (RFC 3629); half a surrogate pair is U+FFFD, as every encoder has it. */
function bytesOf(character: string): number[] {
  const code = character.codePointAt(0) ?? 0;
  const point = code >= 0xd800 && code <= 0xdfff ? 0xfffd : code;
  const tail = (shift: number) => 0x80 | ((point >> shift) & 0x3f);
  if (point < 0x80) return [point];
  if (point < 0x800) return [0xc0 | (point >> 6), tail(0)];
  if (point < 0x10000) return [0xe0 | (point >> 12), tail(6), tail(0)];
  return [0xf0 | (point >> 18), tail(12), tail(6), tail(0)];
}

/** SHA-256 (FIPS 180-4) of a text's UTF-8 bytes, as 64 hexadecimal digits. Plain arithmetic, so that page, command line and worker get it at once and alike. */
export function sha256(text: string): string {
  const view = padded(Uint8Array.from([...text].flatMap(bytesOf)));
  const state = Int32Array.from(START);
  for (let offset = 0; offset < view.byteLength; offset += BLOCK) compress(state, view, offset);
  return [...state].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}
