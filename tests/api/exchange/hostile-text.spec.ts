import { expect, it } from 'vitest';
import { inMemory, outcome, outcomeOf } from './imports-in-memory.js';

// Texts that offices and attackers send; the rules are this product's import contract (the import folder's description in docs).

const CLIENTS = 'client,language\nElm HOA,en\nOak HOA,es\n';
const TWO_CLIENTS = ['Elm HOA en', 'Oak HOA es'];
const utf16 = (text: string, big: boolean): Buffer => {
  const bytes = Buffer.from(text, 'utf16le');
  return big ? bytes.swap16() : bytes;
};
const marked = (bytes: Buffer, ...mark: number[]): Buffer => Buffer.concat([Buffer.from(mark), bytes]);

/** Texts that mean the two clients above. */
const understood: readonly (readonly [string, string | Buffer])[] = [
  ['plain', CLIENTS],
  ['without a line break at the end', CLIENTS.trimEnd()],
  ['a byte-order mark', `\ufeff${CLIENTS}`],
  ['CRLF', CLIENTS.replaceAll('\n', '\r\n')],
  ['CR alone', CLIENTS.replaceAll('\n', '\r')],
  ['line ends mixed', 'client,language\r\nElm HOA,en\rOak HOA,es\n'],
  ['semicolons', CLIENTS.replaceAll(',', ';')],
  ['tabs', CLIENTS.replaceAll(',', '\t')],
  ['a sep= line', `sep=;\r\n${CLIENTS.replaceAll(',', ';')}`],
  ['every cell quoted', 'client,language\n"Elm HOA","en"\n"Oak HOA","es"\n'.replace('client,language', '"client","language"')],
  ['spaces before a quotation mark and after it', 'client,language\n "Elm HOA" ,en\nOak HOA, "es" \n'],
  ['blank lines', `\n\n${CLIENTS.replaceAll('\n', '\n\n')}\n`],
  ['lines of separators alone', 'client,language\n,\nElm HOA,en\n , \nOak HOA,es\n,,,,\n'],
  ['columns in another order', 'language,client\nen,Elm HOA\nes,Oak HOA\n'],
  ['a header in capitals, spaces, underscores', ' CLI ENT ,Lan_Guage\nElm HOA,en\nOak HOA,es\n'],
  ['cells missing at the end', 'client,language,not_to_exceed\nElm HOA,en\nOak HOA,es,\n'],
  ['blank cells beyond the header', 'client,language\nElm HOA,en,,\nOak HOA,es\n'],
  ['words in other case', 'client,language\nElm HOA,EN\nOak HOA,Es\n'],
  ['spaces around cells', 'client,language\n  Elm HOA  , en\nOak HOA\u00a0,es\n'],
  ['a header with semicolons whose text has commas', 'client;language;not to exceed\nElm HOA;en;\nOak HOA;es;\n'],
  ['UTF-16 little endian with its mark', marked(utf16(CLIENTS, false), 0xff, 0xfe)],
  ['UTF-16 big endian with its mark', marked(utf16(CLIENTS, true), 0xfe, 0xff)],
  ['UTF-16 little endian without a mark', utf16(CLIENTS, false)],
  ['UTF-16 big endian without a mark', utf16(CLIENTS, true)],
];

it.each(understood)('reads %s', async (_, text) => {
  for (const piece of [65_536, 7, 1]) {
    const found = await outcomeOf(inMemory({ 'clients.csv': text }, piece));
    expect(found.problems).toEqual([]);
    expect(found.values.clients?.map(({ client, language }) => `${client} ${language}`)).toEqual(TWO_CLIENTS);
  }
});

/** Texts that are refused, or have one bad row; all the problems that must be named, no more and no fewer. */
const refused: readonly (readonly [string, string | Buffer, readonly string[]])[] = [
  ['nothing', '', ['clients.csv:1: HEADER_MISSING']],
  ['blank lines alone', '\n\r\n , \n', ['clients.csv:1: HEADER_MISSING']],
  ['a byte-order mark alone', '\ufeff', ['clients.csv:1: HEADER_MISSING']],
  ['Latin-1', Buffer.from('client\nElm\nRob\xe9 HOA\n', 'latin1'), ['clients.csv:3: NOT_UTF8']],
  ['a cut UTF-8 character at the end', Buffer.concat([Buffer.from('client\nElm\nRob'), Buffer.from([0xc3])]), ['clients.csv:3: NOT_UTF8']],
  ['an overlong UTF-8 slash', Buffer.concat([Buffer.from('client\n'), Buffer.from([0xc0, 0xaf])]), ['clients.csv:2: NOT_UTF8']],
  ['half a surrogate pair in UTF-16', marked(utf16('client\n\ud800x\n', false), 0xff, 0xfe), ['clients.csv:1: NOT_UTF8']],
  ['UTF-32', marked(Buffer.from('c\0\0\0l\0\0\0'), 0xff, 0xfe, 0, 0), ['clients.csv:: NOT_UTF8']],
  ['a NUL in UTF-8', 'client\nElm\nO\0ak\n', ['clients.csv:3: NUL_BYTE']],
  ['a picture', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'), ['clients.csv:1: NOT_UTF8']],
  ['a quotation mark never closed', 'client,language\nElm,en\n"Oak,es\nAsh,en\n', ['clients.csv:3: QUOTE_NOT_CLOSED']],
  ['text after a closing quotation mark', 'client,language\n"Elm" HOA,en\n', ['clients.csv:2: STRAY_QUOTE']],
  ['a row of more than a megabyte', `client,language\n${'x'.repeat(1_100_000)},en\n`, ['clients.csv:2: LINE_TOO_LONG']],
  ['an open quotation mark over a megabyte', `client\nElm\n"${'line\n'.repeat(300_000)}`, ['clients.csv:3: LINE_TOO_LONG']],
  ['a quote bomb', `client\n"${'""'.repeat(1_100_000)}`, ['clients.csv:2: LINE_TOO_LONG']],
  ['a million columns', `client\nElm${','.repeat(1_000_000)}\n`, ['clients.csv:2: TOO_MANY_COLUMNS']],
  ['201 columns in the header', `client${',x'.repeat(200)}\n`, ['clients.csv:1: TOO_MANY_COLUMNS']],
  ['the same column twice', 'client,Client\nElm,Oak\n', ['clients.csv:1:client DUPLICATE_COLUMN']],
  [
    'the same column twice by another spelling',
    'client,not_to_exceed,Not To Exceed\nElm,1,2\n',
    ['clients.csv:1:not_to_exceed DUPLICATE_COLUMN'],
  ],
  ['no column of those required', 'customer,language\nElm,en\n', ['clients.csv:1:client MISSING_COLUMN']],
  ['a header below blank lines that lacks a column', '\n\nname\nElm\n', ['clients.csv:3:client MISSING_COLUMN']],
  [
    'more cells than the header',
    'client,language\nElm, Ash and Co,en\nOak,es\n',
    ['clients.csv:2:language NOT_ONE_OF', 'clients.csv:2: TOO_MANY_CELLS'],
  ],
  ['a required cell that is blank', 'client,language\n  ,en\n', ['clients.csv:2:client MISSING_VALUE']],
  ['a lone apostrophe', "client,language\n',en\n", ['clients.csv:2:client MISSING_VALUE']],
  ['the same name twice', 'client\nElm\nOak\nElm \n', ['clients.csv:4:client DUPLICATE_ROW &2']],
  ['the same name composed and decomposed', 'client\nCafe\u0301\nCaf\u00e9\n', ['clients.csv:3:client DUPLICATE_ROW &2']],
  ['a name with a zero-width space', 'client\nElm\u200b HOA\n', ['clients.csv:2:client INVISIBLE_CHARACTER']],
  ['a name with a mark that turns it around', 'client\nElm \u202eAOH\n', ['clients.csv:2:client INVISIBLE_CHARACTER']],
  ['a name with a right-to-left mark', 'client\nElm\u200f\n', ['clients.csv:2:client INVISIBLE_CHARACTER']],
  ['a name with a line break', 'client\n"Elm\nHOA"\n', ['clients.csv:2:client INVISIBLE_CHARACTER']],
  ['a name with a bell', 'client\nElm\u0007\n', ['clients.csv:2:client INVISIBLE_CHARACTER']],
  ['a name of 201 characters', `client\n${'x'.repeat(201)}\n`, ['clients.csv:2:client TEXT_TOO_LONG']],
  [
    'an error of the spreadsheet',
    'client,language\n#N/A,en\nOak,#REF!\n',
    ['clients.csv:2:client SPREADSHEET_ERROR', 'clients.csv:3:language SPREADSHEET_ERROR'],
  ],
];

it.each(refused)('names what is wrong with %s', async (_, text, problems) => {
  for (const piece of [65_536, 4099]) expect((await outcomeOf(inMemory({ 'clients.csv': text }, piece))).problems).toEqual(problems);
});

it('gives no row of a file that breaks off in the middle', async () => {
  const found = await outcome({ 'clients.csv': 'client\nElm\nOak\n"Ash' });
  expect(found.problems).toEqual(['clients.csv:4: QUOTE_NOT_CLOSED']);
  expect(found.values.clients).toBeUndefined();
});

it('counts the lines within quotation marks', async () => {
  const found = await outcome({
    'properties.csv': 'property,client,notes,allowance_etaf\nA,Elm HOA,"gate\r\ncode\rbox",1\nB,Elm HOA,,high\n',
  });
  expect(found.problems).toEqual(['properties.csv:5:allowance_etaf NOT_A_NUMBER']);
  expect(found.rejected['properties']?.[0]?.line).toBe(5);
});

it('keeps quotation marks, separators and line breaks within cells', async () => {
  const notes = '"a,b;c\t""d""\r\n e"';
  const found = await outcome({ 'properties.csv': `property,client,notes\nA,Elm HOA,${notes}\nB,Elm HOA,5" head\n` });
  expect(found.values.properties?.map((row) => row.notes)).toEqual(['a,b;c\t"d"\r\n e', '5" head']);
});

const columns: readonly (readonly [string, string, readonly string[]])[] = [
  ['an unknown column', 'client,shoe size\nElm,44\n', ['clients.csv:1:shoe size UNKNOWN_COLUMN']],
  [
    'unknown columns twice, and blank ones',
    'client,x,x,,\nElm,1,2,3,4\n',
    ['clients.csv:1:x UNKNOWN_COLUMN', 'clients.csv:1:x UNKNOWN_COLUMN'],
  ],
  [
    '__proto__',
    'client,__proto__,constructor\nElm,1,2\n',
    ['clients.csv:1:__proto__ UNKNOWN_COLUMN', 'clients.csv:1:constructor UNKNOWN_COLUMN'],
  ],
  ['the column of problems of an earlier import', 'client,problem\nElm,whatever\n', []],
];

it.each(columns)('ignores and reports %s', async (_, text, warnings) => {
  const found = await outcome({ 'clients.csv': text });
  expect(found.problems).toEqual([]);
  expect(found.warnings).toEqual(warnings);
  expect(found.values.clients?.map((row) => row.client)).toEqual(['Elm']);
  expect(Object.keys(found.accepted.clients?.[0]?.typed ?? {})).toEqual(['client']);
});

it.each([
  ['exactly one apostrophe', "'=1+1", '=1+1'],
  ['one of two', "''twas", "'twas"],
  ['one before a number', "'5", '5'],
  ['none where there is none', 'Elm', 'Elm'],
  ['one within quotation marks', `"'@home"`, '@home'],
])('removes %s', async (_, cell, name) => {
  const found = await outcome({ 'clients.csv': `client\n${cell}\n` });
  expect(found.values.clients?.[0]?.client).toBe(name);
  expect(found.accepted.clients?.[0]?.typed['client']).toBe(name);
});

it('does not let a name reach the prototype', async () => {
  const found = await outcome({
    'clients.csv': 'client\n__proto__\nconstructor\n',
    'properties.csv': 'property,client\ntoString,__proto__\n',
    'zones.csv': 'property,zone,area_sqft,method\nhasOwnProperty,a,1,spray\ntoString,b,1,spray\n',
  });
  expect(found.problems).toEqual(['zones.csv:2:property UNKNOWN_NAME']);
  expect(found.values.zones?.map((row) => row.zone)).toEqual(['b']);
});

it('knows files by their names and leaves the others aside', async () => {
  const found = await outcome({
    'CLIENTS.CSV': 'client\nElm\n',
    'Back_Flow.csv': 'property,assembly\nElm,B\n',
    'accounts.csv': 'x',
    'findings.csv': '',
    'budget.csv': 'x',
    'clients.tsv': 'client\n',
    'readme.md': 'x',
  });
  expect(found.problems).toEqual([
    'accounts.csv:: OUTPUT_FILE',
    'findings.csv:: OUTPUT_FILE',
    'budget.csv:: UNKNOWN_FILE',
    'clients.tsv:: DUPLICATE_FILE',
    'readme.md:: UNKNOWN_FILE',
  ]);
  expect(Object.keys(found.values)).toEqual(['clients', 'backflow']);
});

it('says that there is nothing to import', async () => {
  expect((await outcome({})).problems).toEqual(['*:: NOTHING_TO_IMPORT']);
});
