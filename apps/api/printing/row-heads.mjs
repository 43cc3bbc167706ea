// The typesetter marks the first row of a table as heads and knows no heads of rows: the first cell of each further row becomes one here
// (PDF 1.7, 14.8.4.3.4 and 14.8.5.7: TH, Scope, Headers; from memory). What it writes is plain: an old-style table of objects, none of
// them in streams of objects.

const ELEMENT = /^ {2}\/Type \/StructElem$/m;
const REFERENCE = /(\d+) 0 R/g;

/** The objects of a PDF by number, and what stands before and behind them. */
function objectsOf(pdf) {
  const [, at] = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(pdf) ?? [];
  const table = pdf.slice(Number(at));
  const [head, count] = /^xref\s+0 (\d+)\s/.exec(table) ?? [];
  if (!head) throw new Error('the PDF has no table of objects as the typesetter writes it');
  const entries = [...table.slice(head.length).matchAll(/(\d{10}) \d{5} ([nf])/g)].slice(0, Number(count));
  const placed = entries.flatMap(([, offset, kind], number) => (kind === 'n' ? [{ number, offset: Number(offset) }] : []));
  placed.sort((a, b) => a.offset - b.offset);
  const ends = [...placed.slice(1).map(({ offset }) => offset), Number(at)];
  return {
    before: pdf.slice(0, placed[0].offset),
    objects: new Map(placed.map(({ number, offset }, place) => [number, pdf.slice(offset, ends[place])])),
    count: Number(count),
    trailer: table.slice(table.indexOf('trailer')).replace(/startxref[\s\S]*$/, ''),
  };
}

const kidsOf = (object) => [...(/^ {2}\/K \[([^\]]*)\]/m.exec(object)?.[1] ?? '').matchAll(REFERENCE)].map(([, number]) => Number(number));
const isA = (object, kind) => ELEMENT.test(object) && new RegExp(`^ {2}/S /${kind}$`, 'm').test(object);

/** The cell becomes the head of its row, with a name by which the others point at it. */
const asHead = (object, name) =>
  object
    .replace(/^ {2}\/S \/TD$/m, `  /S /TH\n  /ID (${name})`)
    .replace(/\/Headers \[[^\]]*\]/, '')
    .replace(/\/O \/Table/, '/O /Table\n      /Scope /Row');

const underHead = (object, name) => object.replace(/\/Headers \[/, `/Headers [(${name}) `);

/** Marks the heads of rows; gives their names with their numbers. */
function markRows(objects) {
  const named = [];
  for (const row of [...objects.values()]) {
    if (!isA(row, 'TR')) continue;
    const [first, ...others] = kidsOf(row);
    if (first === undefined || !isA(objects.get(first) ?? '', 'TD')) continue;
    // Behind the names that the typesetter gives, which begin with U: names of a tree stand in order.
    const name = `V${String(named.length).padStart(6, '0')}`;
    named.push([name, first]);
    objects.set(first, asHead(objects.get(first), name));
    for (const other of others) objects.set(other, underHead(objects.get(other), name));
  }
  return named;
}

/** A name of a tree is found by it: without them there the heads would point at nothing. */
function addNames(objects, named) {
  const [root, text] = [...objects].find(([, object]) => /\/Type \/StructTreeRoot/.test(object)) ?? [];
  if (!text?.includes('/IDTree')) throw new Error('the PDF has no tree of names as the typesetter writes it');
  const added = named.map(([name, number]) => `(${name}) ${number} 0 R`).join(' ');
  objects.set(root, text.replace(/(\/IDTree <<\s*\/Names \[[^\]]*)\]/, `$1 ${added}]`));
}

/**
 * @param {Uint8Array} bytes a PDF as the typesetter writes it
 * @returns {Buffer} the same with the first cell of each row of a table as the head of that row
 */
export function withRowHeads(bytes) {
  const { before, objects, count, trailer } = objectsOf(Buffer.from(bytes).toString('latin1'));
  const named = markRows(objects);
  if (named.length === 0) return Buffer.from(bytes);
  addNames(objects, named);
  let pdf = before;
  const offsets = new Map();
  for (const [number, object] of objects) {
    offsets.set(number, pdf.length);
    pdf += object;
  }
  const entries = Array.from({ length: count }, (_, number) =>
    offsets.has(number) ? `${String(offsets.get(number)).padStart(10, '0')} 00000 n\r\n` : '0000000000 65535 f\r\n',
  );
  const at = pdf.length;
  return Buffer.from(`${pdf}xref\n0 ${count}\n${entries.join('')}${trailer}startxref\n${at}\n%%EOF`, 'latin1');
}
