import { zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { type Book, bookEntries, bookRows, patched, uploaded, zipped } from './stored-files.js';

// Archives and workbooks that offices and attackers send.

const CLIENTS = 'client\nElm HOA\n';
const zeros = new Uint8Array(3 * 1024 ** 2);
const linked = Buffer.from(zipSync({ 'clients.csv': [new TextEncoder().encode('/etc/passwd'), { os: 3, attrs: (0o120777 << 16) >>> 0 }] }));
const lies = patched(zipped({ 'clients.csv': CLIENTS.repeat(1000) }), 'unpackedBytes', 20);

const refusedArchives: readonly (readonly [string, Buffer, readonly string[]])[] = [
  ['cut in half', zipped({ 'clients.csv': CLIENTS }).subarray(0, 80), ['a.zip:: ZIP_DAMAGED']],
  ['empty of bytes', Buffer.alloc(0), ['a.zip:: ZIP_DAMAGED']],
  ['of text', Buffer.from(CLIENTS), ['a.zip:: ZIP_DAMAGED']],
  ['with a wrong checksum', patched(zipped({ 'clients.csv': CLIENTS }), 'crc', 1), ['clients.csv:: ZIP_DAMAGED']],
  ['that unpacks to more than it says', lies, ['clients.csv:: ZIP_DAMAGED']],
  ['that is locked', patched(zipped({ 'clients.csv': CLIENTS }), 'flags', 1), ['a.zip:: ZIP_ENCRYPTED']],
  ['with a link', linked, ['a.zip:: ZIP_SYMLINK']],
  ['with an archive inside', zipped({ 'more.zip': zipped({ 'clients.csv': CLIENTS }) }), ['a.zip:: ZIP_NESTED']],
  ['that leads up', zipped({ '../clients.csv': CLIENTS }), ['a.zip:: ZIP_PATH']],
  ['that leads up from within', zipped({ 'a/../../clients.csv': CLIENTS }), ['a.zip:: ZIP_PATH']],
  ['with an absolute path', zipped({ '/etc/clients.csv': CLIENTS }), ['a.zip:: ZIP_PATH']],
  ['with a drive', zipped({ 'C:/clients.csv': CLIENTS }), ['a.zip:: ZIP_PATH']],
  ['with backslashes', zipped({ 'a\\clients.csv': CLIENTS }), ['a.zip:: ZIP_PATH']],
  ['with a NUL in a name', zipped({ 'clients.csv\0.png': CLIENTS }), ['a.zip:: ZIP_PATH']],
  ['that is a bomb', zipped({ 'clients.csv': zeros }), ['a.zip:: ZIP_RATIO']],
  ['that says it is two gigabytes', patched(zipped({ 'clients.csv': CLIENTS }), 'unpackedBytes', 2 ** 31), ['a.zip:: ZIP_RATIO']],
  [
    'of 201 files',
    zipped(Object.fromEntries(Array.from({ length: 201 }, (_, at) => [`${at}.csv`, 'x']))),
    ['a.zip:: ZIP_TOO_MANY_ENTRIES'],
  ],
  ['with a workbook inside', zipped({ 'clients.xlsx': zipped(bookEntries({ rows: '' })) }), ['clients.xlsx:: XLSX_ONLY_BY_UPLOAD']],
  ['with the same file in two folders', zipped({ 'a/clients.csv': CLIENTS, 'b/clients.csv': CLIENTS }), ['clients.csv:: DUPLICATE_FILE']],
];

it.each(refusedArchives)('refuses an archive %s', async (_, bytes, problems) => {
  expect((await uploaded({ 'a.zip': bytes })).problems).toEqual(problems);
});

it('refuses an archive whose files together are too large', async () => {
  // Three entries that each say 400 MB, packed to 8 MB: none is a bomb alone.
  const noise = Buffer.alloc(8 * 1024 ** 2, 'abcdefghijklmnopqrstuvw');
  const bytes = Buffer.from(zipSync({ 'a.csv': [noise, { level: 0 }], 'b.csv': [noise, { level: 0 }], 'c.csv': [noise, { level: 0 }] }));
  for (let at = bytes.indexOf('PK\x01\x02', 0, 'latin1'); at >= 0; at = bytes.indexOf('PK\x01\x02', at + 4, 'latin1')) {
    bytes.writeUInt16LE(8, at + 10);
    bytes.writeUInt32LE(400 * 1024 ** 2, at + 24);
  }
  expect((await uploaded({ 'a.zip': bytes })).problems).toEqual(['a.zip:: ZIP_TOO_LARGE']);
});

it('reads an archive with a folder, and passes over what machines leave there', async () => {
  const found = await uploaded({
    'a.zip': zipped({ 'world/': '', 'world/Clients.csv': CLIENTS, '__MACOSX/world/._Clients.csv': 'x', 'world/.DS_Store': 'x' }),
  });
  expect(found.problems).toEqual([]);
  expect(found.values.clients?.map((row) => row.client)).toEqual(['Elm HOA']);
});

it('knows an archive by its first bytes, and a file by its name without folders', async () => {
  const found = await uploaded({
    download: zipped({ 'clients.csv': CLIENTS }),
    'C:\\Users\\ann\\backflow.csv': 'property,assembly\nElm,B\n',
  });
  expect(found.problems).toEqual([]);
  expect(Object.keys(found.values)).toEqual(['clients', 'backflow']);
});

const book = (parts: Book): Buffer => zipped(bookEntries(parts));
const number = (value: number | string, style = 0): string => `<c s="${style}"><v>${value}</v></c>`;
const shared = (index: number | string): string => `<c t="s"><v>${index}</v></c>`;
const one = (column: string, cell: string): string =>
  bookRows([
    ['client', column],
    ['Elm HOA', cell],
  ]);

const refusedBooks: readonly (readonly [string, Buffer, readonly string[]])[] = [
  ['that is no archive', Buffer.from('client\n'), ['clients.xlsx:: XLSX_DAMAGED']],
  ['that is cut', book({ rows: bookRows([['client']]) }).subarray(0, 300), ['clients.xlsx:: XLSX_DAMAGED']],
  ['of the old kind or locked', Buffer.from('d0cf11e0a1b11ae10000', 'hex'), ['clients.xlsx:: XLSX_OLD_OR_LOCKED']],
  ['without a workbook', zipped({ 'readme.txt': 'x' }), ['clients.xlsx:: XLSX_DAMAGED']],
  ['without sheets', book({ rows: '', more: { 'xl/workbook.xml': '<workbook><sheets/></workbook>' } }), ['clients.xlsx:: XLSX_NO_SHEET']],
  [
    'whose sheet is elsewhere',
    book({
      rows: '',
      more: {
        'xl/_rels/workbook.xml.rels':
          '<Relationships><Relationship Id="rId1" TargetMode="External" Target="https://sheets.example.test/1.xml"/></Relationships>',
      },
    }),
    ['clients.xlsx:: XLSX_NO_SHEET'],
  ],
  [
    'whose sheet leads out of it',
    book({
      rows: '',
      more: { 'xl/_rels/workbook.xml.rels': '<Relationships><Relationship Id="rId1" Target="../../../etc/passwd"/></Relationships>' },
    }),
    ['clients.xlsx:: XLSX_NO_SHEET'],
  ],
  [
    'with an outside entity',
    book({
      rows: '',
      more: { 'xl/worksheets/sheet1.xml': '<!DOCTYPE x [<!ENTITY e SYSTEM "file:///etc/passwd">]><worksheet>&e;</worksheet>' },
    }),
    ['clients.xlsx:: XLSX_DTD'],
  ],
  [
    'with a flood of entities',
    book({
      rows: '',
      more: {
        'xl/sharedStrings.xml': '<?xml version="1.0"?><!DOCTYPE l [<!ENTITY a "ha"><!ENTITY b "&a;&a;">]><sst><si><t>&b;</t></si></sst>',
      },
    }),
    ['clients.xlsx:: XLSX_DTD'],
  ],
  ['with an entity nobody declared', book({ rows: one('language', '<c t="str"><v>&nbsp;</v></c>') }), ['clients.xlsx:: XLSX_DTD']],
  ['whose XML is broken', book({ rows: '<row r="1"><c></row>' }), ['clients.xlsx:: XLSX_DAMAGED']],
  [
    'whose text is not UTF-8',
    book({ rows: '', more: { 'xl/worksheets/sheet1.xml': Buffer.from('<worksheet>\xe9</worksheet>', 'latin1') } }),
    ['clients.xlsx:: XLSX_DAMAGED'],
  ],
  [
    'with a text out of range',
    book({ rows: bookRows([['client'], [shared(1)]]), strings: ['<t>x</t>'] }),
    ['clients.xlsx:2: XLSX_STRING_INDEX'],
  ],
  ['with a text at -1', book({ rows: bookRows([['client'], [shared(-1)]]), strings: ['<t>x</t>'] }), ['clients.xlsx:2: XLSX_STRING_INDEX']],
  ['with rows out of order', book({ rows: '<row r="2"/><row r="1"/>' }), ['clients.xlsx:2: XLSX_DAMAGED']],
  [
    'with cells out of order',
    book({ rows: '<row r="1"><c r="B1"><v>1</v></c><c r="A1"><v>1</v></c></row>' }),
    ['clients.xlsx:1: XLSX_DAMAGED'],
  ],
  ['with a cell nowhere', book({ rows: '<row r="1"><c r="A0"><v>1</v></c></row>' }), ['clients.xlsx:: XLSX_DAMAGED']],
  ['with a cell far out', book({ rows: '<row r="1"><c r="XFD1"><v>1</v></c></row>' }), ['clients.xlsx:1: TOO_MANY_COLUMNS']],
  ['nested deeply', book({ rows: '<x>'.repeat(100) + '</x>'.repeat(100) }), ['clients.xlsx:: XLSX_DAMAGED']],
  ['with a NUL', book({ rows: bookRows([['client'], ['a_x0000_b']]) }), ['clients.xlsx:2: NUL_BYTE']],
  [
    'of 500 parts',
    zipped({ ...bookEntries({ rows: '' }), ...Object.fromEntries(Array.from({ length: 500 }, (_, at) => [`x${at}.xml`, ''])) }),
    ['clients.xlsx:: ZIP_TOO_MANY_ENTRIES'],
  ],
  ['that is a bomb', book({ rows: '', more: { 'xl/media/a.bin': zeros } }), ['clients.xlsx:: ZIP_RATIO']],
  ['with an error in a cell', book({ rows: one('language', '<c t="e"><v>#REF!</v></c>') }), ['clients.xlsx:2:language SPREADSHEET_ERROR']],
  [
    'with a formula never computed',
    book({ rows: one('not_to_exceed', '<c><f>1+1</f></c>') }),
    ['clients.xlsx:2:not_to_exceed SPREADSHEET_ERROR'],
  ],
];

it.each(refusedBooks)('refuses a workbook %s', async (_, bytes, problems) => {
  expect((await uploaded({ 'clients.xlsx': bytes })).problems).toEqual(problems);
});

// Serial numbers by the spreadsheet's calendars: 1900 with its 29 February, and 1904 (ECMA-376 part 1, 18.17.4.1).
const cells: readonly (readonly [string, string, string, string, Omit<Book, 'rows'>])[] = [
  ['a date', number(46143, 1), 'planted_on', '2026-05-01', { formats: ['yyyy\\-mm\\-dd'] }],
  ['a date shown the American way', number(46143, 1), 'planted_on', '2026-05-01', { formats: ['m/d/yy;@'] }],
  ['a date of a 1904 workbook', number(44681, 1), 'planted_on', '2026-05-01', { formats: ['d\\ mmm\\ yyyy'], date1904: true }],
  ['the last day before the day that never was', number(59, 1), 'planted_on', '1900-02-28', { formats: ['yyyy'] }],
  ['the first day after it', number(61, 1), 'planted_on', '1900-03-01', { formats: ['yyyy'] }],
  ['a shared text', shared(0), 'species', 'Salvia & co', { strings: ['<t>Salvia &amp; co</t>'] }],
  [
    'a shared text in several runs',
    shared(0),
    'species',
    'Salvia alba',
    { strings: ['<r><t>Salvia </t></r><r><t>alba</t></r><rPh><t>x</t></rPh>'] },
  ],
  ['a formula of text', '<c t="str"><f>A1</f><v>Salvia</v></c>', 'species', 'Salvia', {}],
  ['a number with binary noise', number('0.30000000000000004'), 'cover_percent', '0.3', {}],
  ['a small number in scientific form', number('1.5E-5'), 'cover_percent', '0.000015', {}],
  ['a number whose format has an h in quotation marks', number(12, 1), 'cover_percent', '12', { formats: ['0&quot; h&quot;'] }],
  ['a percentage format', number(12, 1), 'cover_percent', '12', { formats: ['[Red]0.00'] }],
];

it.each(cells)('reads %s', async (_, cell, column, typed, parts) => {
  const rows =
    column === 'species'
      ? [
          ['property', 'zone', 'species'],
          ['Elm', 'Lawn', cell],
        ]
      : [
          ['property', 'zone', 'species', column],
          ['Elm', 'Lawn', 'Salvia', cell],
        ];
  const found = await uploaded({ 'Plantings.XLSX': book({ ...parts, rows: bookRows(rows) }) });
  expect(found.problems).toEqual([]);
  expect(found.accepted.plantings?.[0]?.typed[column]).toBe(typed);
});

it('refuses 29 February 1900 and a number that is no date in a date column', async () => {
  const rows = bookRows([
    ['property', 'zone', 'species', 'planted_on'],
    ['Elm', 'Lawn', 'Salvia', number(60, 1)],
    ['Elm', 'Lawn', 'Rosa', number(46143)],
    ['Elm', 'Lawn', 'Acer', number(-3, 1)],
  ]);
  const found = await uploaded({ 'plantings.xlsx': book({ rows, formats: ['yyyy'] }) });
  expect(found.problems).toEqual([2, 3, 4].map((line) => `plantings.xlsx:${line}:planted_on NOT_A_DATE`));
});

it('reads instants, start times and yes from a workbook, with its sheet for a name and the rows of the sheet for lines', async () => {
  const rows = bookRows([
    ['controller', 'property', 'effective_at', 'program', 'days', 'starts', 'station', 'minutes'],
    [],
    ['A', 'Elm', number(46143 + 10 / 24, 1), 'P', 'daily', number(5 / 24, 2), number(1), number(10)],
    ['A', 'Elm', number(46143.25, 1), 'P', 'daily', number(5.25 / 24, 2), number(13), number(10)],
  ]);
  const found = await uploaded({ 'book.xlsx': book({ rows, formats: ['yyyy-mm-dd hh:mm', 'h:mm AM/PM'], sheetName: 'Settings' }) });
  expect(found.problems).toEqual(['book.xlsx:4:station STATION_BEYOND_CONTROLLER']);
  expect(found.values.settings?.[0]).toMatchObject({ effectiveAt: Date.UTC(2026, 4, 1, 17), starts: [300], station: 1, minutes: 10 });
});
