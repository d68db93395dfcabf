import { type Drawing, type Shape, TONES } from '../paper/shapes.ts';

/** Characters that XML keeps for itself. */
const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** The font's name with what stands in for it where it is not installed. */
const FONT = 'Barlow Semi Condensed, Arial Narrow, Liberation Sans Narrow, Arial, sans-serif';

function shapeText(shape: Shape): string {
  if (shape.kind === 'path') {
    const { d, fill, stroke, width, part } = shape;
    const name = part === undefined ? '' : ` data-part="${part}"`;
    const pen = stroke ? ` stroke="${TONES[stroke]}" stroke-width="${width}"` : '';
    return `<path${name} d="${d}" fill="${fill ? TONES[fill] : 'none'}" fill-rule="evenodd"${pen}/>`;
  }
  const { x, y, text, size, strong, anchor = 'start', tone = 'ink', upright, cased, reading } = shape;
  const place = upright ? `transform="translate(${x} ${y}) rotate(-90)"` : `x="${x}" y="${y}"`;
  const name = reading === undefined ? '' : ` data-reading="${reading}"`;
  const casing = cased
    ? ` paint-order="stroke" stroke="${TONES.white}" stroke-width="0.8" stroke-linejoin="round"`
    : '';
  return `<text${name} ${place} font-size="${size}" font-weight="${strong ? 600 : 500}" text-anchor="${anchor}" fill="${TONES[tone]}"${casing}>${escaped(text)}</text>`;
}

/** A drawing as an SVG file that stands alone: `mm` for its width and height, so that it prints in true scale, its words in a named font with others behind it. */
export function svg({ left, top, width, height, label, shapes }: Drawing): string {
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${left} ${top} ${width} ${height}" font-family="${FONT}" stroke-linejoin="round" role="img">`,
    `<title>${escaped(label)}</title>`,
    `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${TONES.white}"/>`,
    ...shapes.map(shapeText),
    '</svg>',
    '',
  ].join('\n');
}
