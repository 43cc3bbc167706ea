// Reads comma-separated text with one header line into one record a row.

function cellsOf(line) {
  const cells = [];
  for (const [, quoted, plain] of line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)) cells.push(quoted?.replaceAll('""', '"') ?? plain);
  return cells;
}

/** A line break inside quotes does not end a row. */
function linesOf(text) {
  const lines = [];
  let open = '';
  for (const piece of text.replace(/^\uFEFF/, '').split(/\r?\n/)) {
    const line = open ? `${open}\n${piece}` : piece;
    const isWhole = (line.match(/"/g) ?? []).length % 2 === 0;
    open = isWhole ? '' : line;
    if (isWhole && line !== '') lines.push(line);
  }
  return lines;
}

/** @returns {Record<string, string>[]} */
export function records(text) {
  const [header, ...lines] = linesOf(text ?? '');
  if (!header) return [];
  const names = cellsOf(header).map((name) => name.toLowerCase().replace(/[\s_]+/g, '_'));
  return lines.map((line) => {
    const cells = cellsOf(line);
    return Object.fromEntries(names.map((name, index) => [name, cells[index] ?? '']));
  });
}
