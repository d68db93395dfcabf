/** A plan is a few kilobytes; more than this is not read, let alone parsed. Bytes of UTF-8, or characters. */
export const LARGEST_FILE = 256 * 1024;
