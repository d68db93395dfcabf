/** Cells of a table: rows of texts, the first row its heading. */
export type Cells = readonly (readonly string[])[];

const NUMBER = /^[-+]?\d+(\.\d+)?$/;
/** What a spreadsheet takes for the beginning of a formula. */
const FORMULA = /^[=+\-@\t\r]/;
const NEEDS_QUOTES = /[",\r\n]/;

/** A text that a spreadsheet would work out is kept a text by an apostrophe before it; a number stays a number. */
const guarded = (text: string): string => (FORMULA.test(text) && !NUMBER.test(text) ? `'${text}` : text);

function cell(text: string): string {
  const safe = guarded(text);
  return NEEDS_QUOTES.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Comma-separated values by RFC 4180: CRLF after every row, quotes where a cell needs them. */
export const csv = (rows: Cells): string => rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

/** Before a CSV file's text, so that a spreadsheet reads it as UTF-8. */
export const BYTE_ORDER_MARK = '\uFEFF';
