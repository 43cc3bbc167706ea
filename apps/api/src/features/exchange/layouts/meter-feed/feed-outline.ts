import { FileRefusal } from '../../files/table-file.js';
import { type EntryLinks, FeedReader, type FeedThing } from './feed-reader.js';

/** Of one meter a feed has a few. */
const MOST_THINGS = 500;
const MOST_BLOCKS = 500_000;

/** What a feed holds but for its readings: its things, and to which series of readings each block belongs. */
export class FeedOutline {
  readonly usagePoints: FeedThing[] = [];
  readonly meterReadings: FeedThing[] = [];
  readonly readingTypes: FeedThing[] = [];
  /** The addresses of blocks, each once, and which of them each block has: a year of days has few. */
  private readonly addresses = new Map<string, number>();
  private readonly addressList: string[] = [];
  private readonly ofBlock: number[] = [];
  readings = 0;

  static async of(bytes: AsyncIterable<Buffer>): Promise<FeedOutline> {
    const outline = new FeedOutline();
    const reader = new FeedReader({
      thing: (thing) => outline.addThing(thing),
      block: (block, links) => outline.addBlock(block, links),
      reading: () => {
        outline.readings += 1;
      },
    });
    for await (const chunk of bytes) reader.push(chunk);
    reader.end();
    return outline;
  }

  /** The series of a block by its place in the feed: the one that names its address, or the only one there is. */
  seriesOf(block: number): FeedThing | null {
    if (this.meterReadings.length <= 1) return this.meterReadings[0] ?? null;
    const address = this.addressList[this.ofBlock[block] ?? -1] ?? '';
    return this.meterReadings.find(({ self, related }) => related.includes(address) || address.startsWith(`${self}/`)) ?? null;
  }

  /** The kind of reading of a series; the only one there is where the series names none. */
  typeOf(series: FeedThing | null): FeedThing | null {
    const linked = this.readingTypes.find(({ self }) => self !== '' && series?.related.includes(self));
    return linked ?? (this.readingTypes.length === 1 ? (this.readingTypes[0] ?? null) : null);
  }

  /** The usage point of a series; the only one there is where none is named. */
  usagePointOf(series: FeedThing | null): FeedThing | null {
    const linked = this.usagePoints.find(
      ({ self, related }) => series !== null && (related.includes(series.up) || series.up.startsWith(`${self}/`)),
    );
    return linked ?? (this.usagePoints.length === 1 ? (this.usagePoints[0] ?? null) : null);
  }

  private addThing(thing: FeedThing): void {
    const kind = { UsagePoint: this.usagePoints, MeterReading: this.meterReadings, ReadingType: this.readingTypes }[thing.is];
    kind?.push(thing);
    if (this.usagePoints.length + this.meterReadings.length + this.readingTypes.length > MOST_THINGS)
      throw new FileRefusal('XML_DAMAGED', { found: `> ${MOST_THINGS} ${thing.is}` });
  }

  private addBlock(block: number, { self, up }: EntryLinks): void {
    if (block >= MOST_BLOCKS) throw new FileRefusal('XML_DAMAGED', { found: `> ${MOST_BLOCKS} IntervalBlock` });
    const address = up || self;
    const known = this.addresses.get(address) ?? this.addressList.push(address) - 1;
    this.addresses.set(address, known);
    this.ofBlock[block] = known;
  }
}
