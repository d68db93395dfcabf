import { encode } from 'uqr';

/** A QR code (ISO/IEC 18004): rows of modules, true is dark, without the quiet zone. */
export interface QrCode {
  readonly modules: readonly (readonly boolean[])[];
  /** 1 to 40: 17 + 4·version modules a side. */
  readonly version: number;
  readonly level: Level;
}

/** Error levels, the strongest first: about 30, 25, 15 and 7 % of the code may be damaged. */
const LEVELS = ['H', 'Q', 'M', 'L'] as const;
type Level = (typeof LEVELS)[number];

/** Light modules that must stand on each side (ISO/IEC 18004, 6.3.8). */
export const QUIET = 4;

/** The largest version taken for an error level above the weakest: 77 modules a side. Our own choice, for a code on a wall. */
const EASY = 15;

const tryEncode = (text: string, level: Level) => {
  try {
    return encode(text, { ecc: level, border: 0 });
  } catch {
    return null;
  }
};

/** The text as a code at the strongest error level whose code stays easy to read; where none does, at the weakest; null where it fits into no code. */
export function qrCode(text: string): QrCode | null {
  for (const level of LEVELS) {
    const made = tryEncode(text, level);
    if (made && (made.version <= EASY || level === 'L'))
      return { modules: made.data, version: made.version, level };
  }
  return null;
}

/** The dark modules as the data of an SVG path, one unit a module, the quiet zone's corner at the origin. */
export function qrPath({ modules }: QrCode): string {
  let path = '';
  modules.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      const from = x;
      while (row[x + 1]) x++;
      path += `M${from + QUIET} ${y + QUIET}h${x + 1 - from}v1H${from + QUIET}z`;
    }
  });
  return path;
}
