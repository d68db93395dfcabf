import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A straight or curved line of a page, filled or stroked; places in mm from the page's lower left, curves by their ends. */
export interface PdfPath {
  readonly filled: string | null;
  readonly points: readonly (readonly [x: number, y: number])[];
}

export interface PdfPage {
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** All text in the order in which it is drawn, one blank between its pieces. */
  readonly text: string;
  /** Where each piece of text begins and ends, mm. */
  readonly pieces: readonly {
    readonly text: string;
    readonly from: number;
    readonly to: number;
    readonly y: number;
  }[];
  readonly paths: readonly PdfPath[];
  readonly images: number;
}

/** A point is 1/72 inch (ISO 32000-1, 8.3.2.3). */
const MM = 25.4 / 72;

type Matrix = readonly [number, number, number, number, number, number];
const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];
const MOVES: readonly number[] = [2, 2, 6, 4, 0];

/** The ends of a path's pieces, as the page has them. */
function pointsOf(data: Float32Array, [a, b, c, d, e, f]: Matrix): [number, number][] {
  const out: [number, number][] = [];
  for (let i = 0; i < data.length; ) {
    const count = MOVES[data[i]];
    if (count > 0) {
      const [x, y] = [data[i + count - 1], data[i + count]];
      out.push([(a * x + c * y + e) * MM, (b * x + d * y + f) * MM]);
    }
    i += 1 + count;
  }
  return out;
}

interface Operators {
  readonly fnArray: readonly number[];
  readonly argsArray: readonly unknown[];
}

/** Follows the page's drawing operators through its transforms. */
function drawn({ fnArray, argsArray }: Operators): { paths: PdfPath[]; images: number } {
  const stack: { matrix: Matrix; fill: string }[] = [];
  let now: { matrix: Matrix; fill: string } = { matrix: [1, 0, 0, 1, 0, 0], fill: '#000000' };
  const paths: PdfPath[] = [];
  let images = 0;
  fnArray.forEach((fn, i) => {
    const args = argsArray[i] as never[];
    if (fn === OPS.save) stack.push(now);
    else if (fn === OPS.restore) now = stack.pop() ?? now;
    else if (fn === OPS.transform) now = { ...now, matrix: times(now.matrix, args as unknown as Matrix) };
    else if (fn === OPS.setFillRGBColor) now = { ...now, fill: args[0] };
    else if (fn === OPS.paintImageXObject) images++;
    else if (fn === OPS.constructPath) {
      const [paint, [data]] = args as unknown as [number, [Float32Array | null]];
      if (!data || (paint !== OPS.fill && paint !== OPS.eoFill && paint !== OPS.stroke)) return;
      const filled = paint === OPS.stroke ? null : now.fill;
      paths.push({ filled, points: pointsOf(data, now.matrix) });
    }
  });
  return { paths, images };
}

/** A PDF file as another program reads it: pages, text, lines. Source of the reading: pdfjs-dist. */
export async function readPdf(bytes: Uint8Array): Promise<PdfPage[]> {
  const file = await getDocument({ data: bytes, verbosity: 0 }).promise;
  const pages: PdfPage[] = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const [, , width, height] = page.view;
    const { items } = await page.getTextContent();
    const pieces = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str.trim(),
              from: item.transform[4] * MM,
              to: (item.transform[4] + item.width) * MM,
              y: item.transform[5] * MM,
            },
          ]
        : [],
    );
    const text = pieces
      .map((piece) => piece.text)
      .join(' ')
      .replace(/\s+/g, ' ');
    pages.push({
      width: width * MM,
      height: height * MM,
      text,
      pieces,
      ...drawn(await page.getOperatorList()),
    });
  }
  await file.destroy();
  return pages;
}
