const lengthOf = (text: string): number => [...text].length;
const padded = (text: string, width: number): string =>
  text + ' '.repeat(Math.max(0, width - lengthOf(text)));

/** Rows as lines of columns two spaces apart, the last as long as it is. */
export function textTable(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => lengthOf(row[i]))));
  return rows.map((row) =>
    row
      .map((cell, i) => (i === row.length - 1 ? cell : padded(cell, widths[i])))
      .join('  ')
      .trimEnd(),
  );
}
