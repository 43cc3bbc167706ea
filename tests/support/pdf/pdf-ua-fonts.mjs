/** A thousandth of the size of the letters: widths may differ by rounding (ISO 14289-1:2014, 7.21.5). */
const MOST_APART = 1;
/** What a letter may not stand for: nothing, a mark of the order of bytes. */
const NO_LETTER = new Set([0, 0xfe_ff, 0xff_fe]);

/** Every font that is shown is embedded, tells its letters, and its widths are those of its program. */
export function fontFaults(pdf, shown) {
  return [...shown].flatMap(([font, codes]) => {
    const name = pdf.of(font.BaseFont)?.name ?? 'a font';
    if (pdf.of(font.Subtype)?.name !== 'Type0') return [`${name} is no composite font, which is not looked at here`];
    const [descendant] = pdf.of(font.DescendantFonts).map((one) => pdf.of(one));
    const descriptor = pdf.of(descendant.FontDescriptor);
    const program = pdf.of(descriptor.FontFile2) ?? pdf.of(descriptor.FontFile3) ?? pdf.of(descriptor.FontFile);
    return [
      ...compositeFaults(pdf, { font, descendant, program }),
      ...letterFaults(pdf, font, codes),
      ...(pdf.of(descriptor.FontFile2) ? widthFaults(pdf, { descendant, program, codes }) : []),
    ].map((fault) => `${fault}: ${name}`);
  });
}

function compositeFaults(pdf, { font, descendant, program }) {
  const faults = [];
  const info = pdf.of(descendant.CIDSystemInfo);
  const isTrueType = pdf.of(descendant.Subtype)?.name === 'CIDFontType2';
  if (!program) faults.push('31-009: not embedded');
  if (!info?.Registry || !info?.Ordering || info.Supplement === undefined) faults.push('31-001: it does not say its collection of signs');
  if (isTrueType && pdf.of(descendant.CIDToGIDMap) === undefined) faults.push('31-004: no map from codes to signs');
  if (!['Identity-H', 'Identity-V'].includes(pdf.of(font.Encoding)?.name)) faults.push('31-006: an encoding that is not looked at here');
  return faults;
}

const utf16 = (text) => {
  const units = [];
  for (let at = 0; at + 1 < text.length; at += 2) units.push(text.charCodeAt(at) * 256 + text.charCodeAt(at + 1));
  return String.fromCharCode(...units);
};

function letterFaults(pdf, font, codes) {
  const map = pdf.of(font.ToUnicode);
  if (!map) return ['31-027: it does not tell its letters'];
  const letters = lettersOf(pdf.bytesOf(map));
  const faults = [];
  for (const code of codes) {
    const text = letters.get(code);
    if (code === 0) faults.push('31-030: a sign that stands for no letter is shown');
    if (!text) faults.push(`31-027: no letter for the code ${code}`);
    else if ([...text].some((letter) => NO_LETTER.has(letter.codePointAt(0)))) faults.push(`31-028: the code ${code} stands for no letter`);
  }
  return faults;
}

/** Codes with their letters (Adobe Technical Note 5411): single ones and ranges. */
function lettersOf(map) {
  const letters = new Map();
  const bytes = (hex) => utf16(Buffer.from(hex.replace(/\s/g, ''), 'hex').toString('latin1'));
  for (const [, block] of map.matchAll(/beginbfchar([\s\S]*?)endbfchar/g))
    for (const [, code, text] of block.matchAll(/<([^>]*)>\s*<([^>]*)>/g)) letters.set(Number.parseInt(code, 16), bytes(text));
  for (const [, block] of map.matchAll(/beginbfrange([\s\S]*?)endbfrange/g))
    for (const [, from, to, text] of block.matchAll(/<([^>]*)>\s*<([^>]*)>\s*<([^>]*)>/g)) {
      const first = bytes(text);
      for (let code = Number.parseInt(from, 16); code <= Number.parseInt(to, 16); code += 1)
        letters.set(code, first.slice(0, -1) + String.fromCharCode(first.charCodeAt(first.length - 1) + code - Number.parseInt(from, 16)));
    }
  return letters;
}

/** The widths that the PDF tells against those in the font's own tables (OpenType 1.9: head, hhea, hmtx). */
function widthFaults(pdf, { descendant, program, codes }) {
  const font = Buffer.from(pdf.bytesOf(program), 'latin1');
  const tables = new Map();
  for (let at = 0; at < font.readUInt16BE(4); at += 1) {
    const entry = 12 + 16 * at;
    tables.set(font.toString('latin1', entry, entry + 4), font.readUInt32BE(entry + 8));
  }
  const unitsPerEm = font.readUInt16BE(tables.get('head') + 18);
  const longMetrics = font.readUInt16BE(tables.get('hhea') + 34);
  const told = widthsOf(pdf, descendant);
  const otherwise = pdf.of(descendant.DW) ?? 1000;
  const faults = [];
  for (const code of codes) {
    const own = (font.readUInt16BE(tables.get('hmtx') + 4 * Math.min(code, longMetrics - 1)) * 1000) / unitsPerEm;
    if (Math.abs((told.get(code) ?? otherwise) - own) > MOST_APART)
      faults.push(`31-016: the code ${code} is told ${told.get(code) ?? otherwise} wide and is ${own}`);
  }
  return faults;
}

function widthsOf(pdf, descendant) {
  const list = (pdf.of(descendant.W) ?? []).map((value) => pdf.of(value));
  const widths = new Map();
  for (let at = 0; at < list.length; ) {
    const [first, second, third] = list.slice(at, at + 3);
    if (Array.isArray(second)) {
      second.forEach((width, place) => widths.set(first + place, width));
      at += 2;
    } else {
      for (let code = first; code <= second; code += 1) widths.set(code, third);
      at += 3;
    }
  }
  return widths;
}
