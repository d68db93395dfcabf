import type { Browser } from 'playwright-core';

/** A picture's pixels, row by row, four bytes each: red, green, blue, alpha. */
export interface Pixels {
  width: number;
  height: number;
  bytes: Uint8Array;
}

/** Decodes a PNG in a page of its own, where no policy forbids it. */
export async function decode(browser: Browser, png: Buffer): Promise<Pixels> {
  const page = await browser.newPage();
  try {
    const { width, height, text } = await page.evaluate(async (base64) => {
      const file = await (await fetch(`data:image/png;base64,${base64}`)).blob();
      const picture = await createImageBitmap(file);
      const canvas = new OffscreenCanvas(picture.width, picture.height);
      const context = canvas.getContext('2d');
      context?.drawImage(picture, 0, 0);
      const { data } = context?.getImageData(0, 0, picture.width, picture.height) ?? { data: [] };
      let bytes = '';
      for (const byte of data) bytes += String.fromCharCode(byte);
      return { width: picture.width, height: picture.height, text: btoa(bytes) };
    }, png.toString('base64'));
    return { width, height, bytes: new Uint8Array(Buffer.from(text, 'base64')) };
  } finally {
    await page.close();
  }
}

export type Rgb = readonly [red: number, green: number, blue: number];

/** Share of the pixels, 0 to 1, whose every channel lies within `within` of the colour. */
export function shareOf({ bytes }: Pixels, [r, g, b]: Rgb, within: number): number {
  let found = 0;
  for (let i = 0; i < bytes.length; i += 4) {
    const off = Math.max(Math.abs(bytes[i] - r), Math.abs(bytes[i + 1] - g), Math.abs(bytes[i + 2] - b));
    if (off <= within) found += 1;
  }
  return (4 * found) / bytes.length;
}

/** Share of the pixels that differ between two pictures of one size by more than `within` in some channel. */
export function shareChanged(a: Pixels, b: Pixels, within: number): number {
  let changed = 0;
  for (let i = 0; i < a.bytes.length; i += 4) {
    const off = Math.max(...[0, 1, 2].map((k) => Math.abs(a.bytes[i + k] - b.bytes[i + k])));
    if (off > within) changed += 1;
  }
  return (4 * changed) / a.bytes.length;
}
