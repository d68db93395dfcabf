/** The table of CRC-32 (ISO 3309, ITU-T V.42; polynomial 0xEDB88320, reflected). */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let c = byte;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/** CRC-32 of a text's UTF-8: tells a text that was written to the end from one that was not. No protection against anybody. */
export function checksum(text: string): number {
  let crc = 0xffffffff;
  for (const byte of new TextEncoder().encode(text)) crc = TABLE[(crc ^ byte) & 0xff] ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}
