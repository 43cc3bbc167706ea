import { TextDecoder } from 'node:util';
import { SaxesParser } from 'saxes';
import { FileRefusal } from './table-file.js';

/** What a reader of XML is told: elements by their local names, text as it comes. */
export interface XmlReader {
  readonly opened: (name: string, attributes: Readonly<Record<string, string>>) => void;
  readonly closed: (name: string) => void;
  readonly text: (text: string) => void;
}

const DEEPEST = 64;

/** What a file is refused for: as a workbook, or as a file of XML of its own. */
const REFUSALS = {
  workbook: { doctype: 'XLSX_DTD', damaged: 'XLSX_DAMAGED' },
  xml: { doctype: 'XML_DTD', damaged: 'XML_DAMAGED' },
} as const;

/** Strict XML, fed piece by piece. A document type or any entity beyond the five of XML is refused: no honest file has one. */
export class XmlEvents {
  private readonly parser = new SaxesParser();
  private readonly decoder = new TextDecoder('utf-8', { fatal: true });
  private depth = 0;
  private readonly refusal: (typeof REFUSALS)[keyof typeof REFUSALS];

  constructor(reader: XmlReader, of: keyof typeof REFUSALS = 'workbook') {
    this.refusal = REFUSALS[of];
    this.parser.on('doctype', () => {
      throw new FileRefusal(this.refusal.doctype);
    });
    this.parser.on('error', (error) => {
      const code = /entity/i.test(error.message) ? this.refusal.doctype : this.refusal.damaged;
      throw new FileRefusal(code, of === 'xml' ? { line: this.line } : {});
    });
    this.parser.on('opentag', (tag) => {
      this.depth += 1;
      if (this.depth > DEEPEST) throw new FileRefusal(this.refusal.damaged);
      reader.opened(local(tag.name), tag.attributes);
    });
    this.parser.on('closetag', (tag) => {
      this.depth -= 1;
      reader.closed(local(tag.name));
    });
    this.parser.on('text', (text) => reader.text(text));
    this.parser.on('cdata', (text) => reader.text(text));
  }

  /** The line on which the reading stands. */
  get line(): number {
    return this.parser.line;
  }

  push(bytes: Buffer): void {
    const text = this.decoded(bytes, true);
    // Before the parser sees it, which would first gather the whole of it.
    if (this.depth === 0 && text.includes('<!DOCTYPE')) throw new FileRefusal(this.refusal.doctype);
    this.parser.write(text);
  }

  end(): void {
    this.parser.write(this.decoded(Buffer.alloc(0), false));
    this.parser.close();
  }

  private decoded(bytes: Buffer, more: boolean): string {
    try {
      return this.decoder.decode(bytes, { stream: more });
    } catch {
      throw new FileRefusal(this.refusal.damaged);
    }
  }
}

function local(name: string): string {
  return name.slice(name.indexOf(':') + 1);
}
