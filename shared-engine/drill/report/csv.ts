// Tables as CSV by RFC 4180, safe to open in a spreadsheet.

export type Cell = string | number | null;

/**
 * Lines end in CR LF. A text with a comma, a quote or a line break is quoted, with its quotes doubled (RFC 4180,
 * section 2). A text that a spreadsheet would run as a formula gets an apostrophe in front. Null is empty.
 */
export function csvText(rows: readonly (readonly Cell[])[]): string {
  return rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');
}

function cellText(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = /^\s*[=+\-@\t\r\n＝＋－＠]/.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
