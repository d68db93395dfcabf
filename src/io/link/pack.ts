import { deflateSync, Inflate } from 'fflate';
import plans from './dictionary-1.json';

/** No more of an address than this is looked at, characters. */
export const LONGEST_PACKED = 8 * 1024;
/** No more than this is unpacked, bytes. */
const LARGEST_TEXT = 256 * 1024;
/** Packed bytes that are unpacked at a time: deflate gives back at most 1,032 for one, so the cap is passed by little. */
const BITE = 64;

/**
 * Text that packed text may point back to. Frozen: a link of the past is read with it, so it is never edited; a better one would be another file and another tag.
 */
const DICTIONARY = new TextEncoder().encode(JSON.stringify(plans));

/** Text as characters that may stand in an address: deflate (RFC 1951) with a preset dictionary, then base64url (RFC 4648, 5) without padding. */
export function pack(text: string): string {
  const packed = deflateSync(new TextEncoder().encode(text), { level: 9, dictionary: DICTIONARY });
  let bytes = '';
  for (const byte of packed) bytes += String.fromCharCode(byte);
  return btoa(bytes).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
}

/** The inverse of {@link pack}; null where the text was not packed so, is cut off, or is larger than what is read. */
export function unpack(packed: string): string | null {
  if (packed.length > LONGEST_PACKED || !/^[\w-]+$/.test(packed)) return null;
  try {
    const bytes = atob(packed.replaceAll('-', '+').replaceAll('_', '/'));
    return inflated(Uint8Array.from(bytes, (byte) => byte.charCodeAt(0)));
  } catch {
    return null;
  }
}

/** Throws where the bytes are not a whole deflate stream of UTF-8, or hold more than the cap. */
function inflated(bytes: Uint8Array): string {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let size = 0;
  let text = '';
  const inflate = new Inflate({ dictionary: DICTIONARY }, (part) => {
    size += part.length;
    if (size > LARGEST_TEXT) throw new RangeError('more than is unpacked');
    text += decoder.decode(part, { stream: true });
  });
  for (let at = 0; at < bytes.length; at += BITE)
    inflate.push(bytes.subarray(at, at + BITE), at + BITE >= bytes.length);
  return text + decoder.decode();
}
