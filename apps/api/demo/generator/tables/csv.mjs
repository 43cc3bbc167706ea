// Comma-separated text with one header line; a blank cell is an unknown value.

function cell(value) {
  if (value === null || value === undefined) return '';
  const text = String(value);
  return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

export const csvText = ({ header, rows }) => [header, ...rows].map((row) => `${row.map(cell).join(',')}\n`).join('');

/** A number with at most so many decimals and no trailing zeros; blank stays blank. */
export function trimmed(value, decimals) {
  if (value === null || value === undefined || value === '') return '';
  return String(Number(value.toFixed(decimals)));
}
