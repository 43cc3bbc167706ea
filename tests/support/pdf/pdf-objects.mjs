// Reads a PDF that keeps its objects in an old-style table: values, streams, and the operators of contents (ISO 32000-1:2008, 7.2 to 7.5; from memory).
import { inflateSync } from 'node:zlib';

const SPACE = /[\0\t\n\f\r ]/;
const DELIMITER = /[()<>[\]{}/%\0\t\n\f\r ]/;

/** A name such as /Page; other than a text of the same letters. */
export class Name {
  constructor(name) {
    this.name = name;
  }
}
/** A reference to an object. */
export class Reference {
  constructor(number) {
    this.number = number;
  }
}
/** A word that is none of the values: an operator of a content, or one that ends an object. */
export class Word {
  constructor(word) {
    this.word = word;
  }
}

const ESCAPES = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** Reads values from a text of bytes, one after the other. */
export class Reader {
  constructor(text, at = 0) {
    this.text = text;
    this.at = at;
  }

  skip() {
    for (;;) {
      while (this.at < this.text.length && SPACE.test(this.text[this.at])) this.at += 1;
      if (this.text[this.at] !== '%') return;
      while (this.at < this.text.length && !/[\r\n]/.test(this.text[this.at])) this.at += 1;
    }
  }

  isAtEnd() {
    this.skip();
    return this.at >= this.text.length;
  }

  /** The next value; a number that begins a reference is one. */
  next() {
    this.skip();
    const letter = this.text[this.at];
    if (letter === '/') return this.name();
    if (letter === '(') return this.words();
    if (letter === '[') return this.list();
    if (letter === '<') return this.text[this.at + 1] === '<' ? this.dictionary() : this.hexadecimal();
    const token = this.token();
    if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(token)) return this.numberOrReference(token);
    return { true: true, false: false, null: null }[token] ?? (token === 'null' ? null : new Word(token));
  }

  token() {
    const from = this.at;
    while (this.at < this.text.length && !DELIMITER.test(this.text[this.at])) this.at += 1;
    if (this.at === from) this.at += 1;
    return this.text.slice(from, this.at);
  }

  numberOrReference(token) {
    const rest = /^[\0\t\n\f\r ]+\d+[\0\t\n\f\r ]+R(?![A-Za-z0-9])/.exec(this.text.slice(this.at, this.at + 24));
    if (!rest || !/^\d+$/.test(token)) return Number(token);
    this.at += rest[0].length;
    return new Reference(Number(token));
  }

  name() {
    this.at += 1;
    const from = this.at;
    while (this.at < this.text.length && !DELIMITER.test(this.text[this.at])) this.at += 1;
    return new Name(
      this.text.slice(from, this.at).replace(/#([0-9a-f]{2})/gi, (_, code) => String.fromCharCode(Number.parseInt(code, 16))),
    );
  }

  words() {
    let said = '';
    let depth = 0;
    for (;;) {
      const letter = this.text[this.at];
      this.at += 1;
      if (letter === undefined) throw new Error('a text of the PDF has no end');
      if (letter === '\\') said += this.escaped();
      else {
        if (letter === '(') depth += 1;
        if (letter === ')') depth -= 1;
        if (depth === 0) return said;
        if (depth > 1 || letter !== '(') said += letter;
      }
    }
  }

  escaped() {
    const octal = /^[0-7]{1,3}/.exec(this.text.slice(this.at, this.at + 3))?.[0];
    this.at += octal ? octal.length : 1;
    if (octal) return String.fromCharCode(Number.parseInt(octal, 8));
    const letter = this.text[this.at - 1];
    return letter === '\n' ? '' : (ESCAPES[letter] ?? letter);
  }

  hexadecimal() {
    const end = this.text.indexOf('>', this.at);
    const digits = this.text.slice(this.at + 1, end).replace(/\s/g, '');
    this.at = end + 1;
    return Buffer.from(digits.length % 2 ? `${digits}0` : digits, 'hex').toString('latin1');
  }

  list() {
    this.at += 1;
    const values = [];
    for (;;) {
      this.skip();
      if (this.text[this.at] === ']') break;
      values.push(this.next());
    }
    this.at += 1;
    return values;
  }

  dictionary() {
    this.at += 2;
    const entries = {};
    for (;;) {
      this.skip();
      if (this.text.startsWith('>>', this.at)) break;
      const key = this.next();
      if (!(key instanceof Name)) throw new Error(`a dictionary of the PDF has a key that is no name, near ${this.at}`);
      entries[key.name] = this.next();
    }
    this.at += 2;
    return entries;
  }
}

/** The objects of a PDF. */
export class PdfObjects {
  constructor(bytes) {
    this.text = Buffer.from(bytes).toString('latin1');
    this.offsets = new Map();
    this.read = new Map();
    const [, at] = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(this.text) ?? [];
    const table = this.text.slice(Number(at));
    const [head, count] = /^xref\s+0 (\d+)\s+/.exec(table) ?? [];
    if (!head) throw new Error('the PDF has no old-style table of objects');
    for (let number = 0; number < Number(count); number += 1) {
      const entry = table.slice(head.length + 20 * number, head.length + 20 * (number + 1));
      if (entry[17] === 'n') this.offsets.set(number, Number(entry.slice(0, 10)));
    }
    this.trailer = new Reader(table, table.indexOf('trailer') + 'trailer'.length).next();
  }

  /** What a value is: a reference is followed. */
  of(value) {
    if (!(value instanceof Reference)) return value;
    if (!this.read.has(value.number)) this.read.set(value.number, this.object(value.number));
    return this.read.get(value.number);
  }

  object(number) {
    const offset = this.offsets.get(number);
    if (offset === undefined) return null;
    const reader = new Reader(this.text, offset);
    if (reader.next() !== number) throw new Error(`object ${number} does not stand where the table says`);
    reader.next();
    reader.next();
    const value = reader.next();
    reader.skip();
    if (!this.text.startsWith('stream', reader.at)) return value;
    const from = reader.at + 'stream'.length + (this.text[reader.at + 6] === '\r' ? 2 : 1);
    return { ...value, stream: this.text.slice(from, from + this.of(value.Length)) };
  }

  /** The bytes of a stream, unpacked, as latin1. */
  bytesOf(object) {
    const filters = [this.of(object.Filter) ?? []].flat().map(({ name }) => name);
    return filters.reduce((bytes, filter) => {
      if (filter !== 'FlateDecode') throw new Error(`the PDF packs by ${filter}, which is not read here`);
      return inflateSync(Buffer.from(bytes, 'latin1')).toString('latin1');
    }, object.stream);
  }
}

/** The operators of a content with their operands, one after the other. */
export function* operatorsOf(content) {
  const reader = new Reader(content);
  let operands = [];
  while (!reader.isAtEnd()) {
    const value = reader.next();
    if (!(value instanceof Word)) operands.push(value);
    else {
      if (value.word === 'BI') throw new Error('the PDF has a picture within a content, which is not read here');
      yield { operator: value.word, operands };
      operands = [];
    }
  }
}
