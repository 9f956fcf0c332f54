import type { Table } from '@panewright/drawing';

/**
 * A table as comma-separated text, lines ended by CR LF, cells quoted where they hold a comma, a quote or a line end.
 * A cell of words that a spreadsheet would take for a formula gets an apostrophe before it. Numbers to 0.001.
 *
 * @source sources.md#rfc-4180
 */
export function csv({ header, rows }: Table): string {
  return [header, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number): string {
  if (typeof value === 'number') return String(Number(value.toFixed(3)));
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
