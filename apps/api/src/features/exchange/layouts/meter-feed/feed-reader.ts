import { FileRefusal } from '../../files/table-file.js';
import { XmlEvents } from '../../files/xml-events.js';

/** The links of an Atom entry. */
export interface EntryLinks {
  readonly self: string;
  readonly up: string;
  readonly related: readonly string[];
}

/** A thing of a feed (a usage point, a reading type) with its fields; a nested field is named with a dot. */
export interface FeedThing extends EntryLinks {
  readonly is: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** One reading of an interval block. */
export interface FeedReading {
  readonly line: number;
  /** The number of its block in the feed, from 0. */
  readonly block: number;
  readonly start: string;
  readonly duration: string;
  readonly value: string;
  readonly qualities: readonly string[];
}

/** Who is told what a feed holds. */
export interface FeedListener {
  readonly thing?: (thing: FeedThing) => void;
  /** A block, with the links of its entry when that has ended. */
  readonly block?: (block: number, links: EntryLinks) => void;
  readonly reading?: (reading: FeedReading) => void;
}

const THINGS = new Set(['UsagePoint', 'MeterReading', 'ReadingType']);
const LONGEST_VALUE = 200;
const LONGEST_ADDRESS = 500;
/** Links of an entry, fields of a thing, verdicts on a reading: more than these are no meter's. */
const MOST_OF_ONE = 100;
/** Text without a single element in it, longer than this, is no feed. */
const LONGEST_SILENCE = 1024 ** 2;

interface Draft {
  self: string;
  up: string;
  related: string[];
}

const noLinks = (): Draft => ({ self: '', up: '', related: [] });

/** Reads a feed as it arrives and tells what it holds; of the feed itself nothing is kept. */
export class FeedReader {
  private readonly xml: XmlEvents;
  private readonly path: string[] = [];
  private text = '';
  private links = noLinks();
  private thing: { is: string; depth: number; fields: Record<string, string> } | null = null;
  private ended: { is: string; fields: Record<string, string> }[] = [];
  private blocks = 0;
  private entryBlocks: number[] = [];
  private reading: { line: number; fields: Record<string, string>; qualities: string[] } | null = null;
  private silence = 0;

  constructor(private readonly listener: FeedListener) {
    this.xml = new XmlEvents(
      {
        opened: (name, attributes) => this.opened(name, attributes),
        closed: (name) => this.closed(name),
        text: (text) => {
          if (this.text.length <= LONGEST_VALUE) this.text += text.slice(0, LONGEST_VALUE + 1);
        },
      },
      'xml',
    );
  }

  push(bytes: Buffer): void {
    this.silence += bytes.length;
    if (this.silence > LONGEST_SILENCE) throw new FileRefusal('XML_DAMAGED', { line: this.xml.line, found: `> ${LONGEST_SILENCE}` });
    this.xml.push(bytes);
  }

  end(): void {
    this.xml.end();
    this.endEntry();
  }

  private opened(name: string, attributes: Readonly<Record<string, string>>): void {
    this.silence = 0;
    this.text = '';
    this.path.push(name);
    if (name === 'entry') this.endEntry();
    else if (name === 'link') this.link(attributes);
    else if (name === 'IntervalBlock') this.entryBlocks.push(this.blocks);
    else if (name === 'IntervalReading') this.reading = { line: this.xml.line, fields: {}, qualities: [] };
    else if (THINGS.has(name)) this.thing = { is: name, depth: this.path.length, fields: {} };
  }

  private link({ rel, href }: Readonly<Record<string, string>>): void {
    const address = (href ?? '').slice(0, LONGEST_ADDRESS);
    if (rel === 'self' || rel === 'up') this.links[rel] = address;
    else if (rel === 'related' && this.links.related.length < MOST_OF_ONE) this.links.related.push(address);
  }

  private closed(name: string): void {
    this.silence = 0;
    this.path.pop();
    const text = this.text.trim();
    this.text = '';
    if (name === 'IntervalReading') this.endReading();
    else if (this.reading) this.readingField(name, text);
    else if (name === 'IntervalBlock') this.blocks += 1;
    else if (name === this.thing?.is) this.endThing();
    else if (this.thing && text !== '' && Object.keys(this.thing.fields).length < MOST_OF_ONE)
      this.thing.fields[[...this.path.slice(this.thing.depth), name].join('.')] = text;
    else if (name === 'entry') this.endEntry();
  }

  private readingField(name: string, text: string): void {
    if (!this.reading || text === '') return;
    if (name === 'quality' && this.reading.qualities.length < MOST_OF_ONE) this.reading.qualities.push(text);
    else if (name === 'start' || name === 'duration' || name === 'value') this.reading.fields[name] = text;
  }

  private endReading(): void {
    if (!this.reading) return;
    const { line, fields, qualities } = this.reading;
    const { start = '', duration = '', value = '' } = fields;
    this.listener.reading?.({ line, block: this.blocks, start, duration, value, qualities });
    this.reading = null;
  }

  private endThing(): void {
    if (this.thing) this.ended.push(this.thing);
    if (this.ended.length > MOST_OF_ONE)
      throw new FileRefusal('XML_DAMAGED', { line: this.xml.line, found: `> ${MOST_OF_ONE} ${this.thing?.is}` });
    this.thing = null;
  }

  /** The links of an entry may stand behind its content: what it holds is told when it has ended. */
  private endEntry(): void {
    for (const { is, fields } of this.ended) this.listener.thing?.({ is, fields, ...this.links });
    for (const block of this.entryBlocks) this.listener.block?.(block, this.links);
    this.ended = [];
    this.entryBlocks = [];
    this.links = noLinks();
  }
}
