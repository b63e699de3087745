// Tables as CSV by RFC 4180, safe to open in a spreadsheet, whatever it takes for the end of a cell.

export type Cell = string | number | null;

/** What stands between two cells: where decimals have a comma, spreadsheets expect a semicolon. */
export type CsvStyle = 'comma' | 'semicolon';

const SEPARATORS: Readonly<Record<CsvStyle, string>> = { comma: ',', semicolon: ';' };

/**
 * Lines end in CR LF. A text with a separator, a quote or a line break is quoted, with its quotes doubled (RFC 4180,
 * section 2). A text that a spreadsheet would run as a formula gets an apostrophe in front, and so does whatever would
 * become a cell of its own in one that separates cells otherwise. Null is empty.
 */
export function csvText(rows: readonly (readonly Cell[])[], style: CsvStyle = 'comma'): string {
  const line = (row: readonly Cell[]) => row.map((cell) => cellText(cell, style)).join(SEPARATORS[style]);
  return rows.map((row) => `${line(row)}\r\n`).join('');
}

/** The start of a cell, here or in a spreadsheet that ends cells otherwise, before a sign that begins a formula. */
const FORMULA = /(?<=^|[,;\t\r\n])(?=[\s"']*[=+\-@＝＋－＠])/g;

function cellText(cell: Cell, style: CsvStyle): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return style === 'comma' ? String(cell) : String(cell).replace('.', ',');
  const guarded = cell.replace(FORMULA, "'");
  const text = /^[\t\r\n]/.test(guarded) ? `'${guarded}` : guarded;
  return /[",;\t\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
