import { TextDecoder } from 'node:util';
import { FileRefusal } from './table-file.js';

const SNIFFED_BYTES = 4096;
const NUL = '\0';
/** Fewer NULs than the shortest header line would have in UTF-16 are damage, not an encoding. */
const FEWEST_NULS = 5;

/**
 * The text of a file: UTF-8 with or without a byte-order mark, UTF-16 by its mark or by the pattern of its NUL bytes.
 * Anything else is refused: a guessed code page would change names without anybody noticing.
 */
export async function* decodeText(chunks: AsyncIterable<Buffer>): AsyncGenerator<string> {
  let decoder: TextDecoder | null = null;
  let head = Buffer.alloc(0);
  const position = new LinePosition();
  for await (const chunk of chunks) {
    let bytes = chunk;
    if (!decoder) {
      head = Buffer.concat([head, chunk]);
      if (head.length < SNIFFED_BYTES) continue;
      decoder = decoderFor(head);
      bytes = head;
    }
    yield decoded(decoder, bytes, position, true);
  }
  if (!decoder) {
    decoder = decoderFor(head);
    yield decoded(decoder, head, position, true);
  }
  // What is still incomplete now was cut off.
  yield decoded(decoder, Buffer.alloc(0), position, false);
}

function decoderFor(head: Buffer): TextDecoder {
  return new TextDecoder(encodingOf(head), { fatal: true });
}

/** Byte-order marks, the longer first. */
const MARKS: readonly (readonly [string, string])[] = [
  ['\xff\xfe\0\0', 'utf-32'],
  ['\0\0\xfe\xff', 'utf-32'],
  ['\xff\xfe', 'utf-16le'],
  ['\xfe\xff', 'utf-16be'],
];

function encodingOf(head: Buffer): string {
  const first = head.toString('latin1', 0, 4);
  const encoding = MARKS.find(([mark]) => first.startsWith(mark))?.[1];
  if (encoding === 'utf-32') throw new FileRefusal('NOT_UTF8', { found: 'UTF-32' });
  return encoding ?? encodingByNuls(head);
}

/** Latin text in UTF-16 has a NUL in nearly every second byte; UTF-8 has none at all. */
function encodingByNuls(head: Buffer): string {
  const nuls = [0, 0] as [number, number];
  head.forEach((byte, at) => {
    if (byte === 0) nuls[(at % 2) as 0 | 1] += 1;
  });
  if (Math.max(...nuls) < FEWEST_NULS) return 'utf-8';
  const half = head.length / 2;
  if (nuls[1] > half * 0.6 && nuls[0] < half * 0.1) return 'utf-16le';
  if (nuls[0] > half * 0.6 && nuls[1] < half * 0.1) return 'utf-16be';
  return 'utf-8';
}

function decoded(decoder: TextDecoder, bytes: Buffer, position: LinePosition, more: boolean): string {
  let text: string;
  try {
    text = decoder.decode(bytes, { stream: more });
  } catch {
    throw new FileRefusal('NOT_UTF8', position.ofBadBytes(decoder.encoding, bytes));
  }
  const nul = text.indexOf(NUL);
  if (nul >= 0) throw new FileRefusal('NUL_BYTE', { line: position.line + position.breaks(text.slice(0, nul)) });
  position.advance(text);
  return text;
}

/** Follows the line on which the decoder stands, so that a refusal can name it. */
class LinePosition {
  line = 1;
  private endsInReturn = false;

  advance(text: string): void {
    if (text === '') return;
    this.line += this.breaks(text);
    this.endsInReturn = text.endsWith('\r');
  }

  breaks(text: string): number {
    const after = this.endsInReturn && text.startsWith('\n') ? text.slice(1) : text;
    return after.match(/\r\n|\r|\n/g)?.length ?? 0;
  }

  ofBadBytes(encoding: string, bytes: Buffer): { line: number; found: string } {
    if (encoding !== 'utf-8') return { line: this.line, found: encoding };
    if (bytes.length === 0) return { line: this.line, found: 'EOF' };
    const at = firstBadByte(bytes);
    const text = bytes.toString('latin1', 0, at);
    return { line: this.line + this.breaks(text), found: `byte 0x${(bytes[at] ?? 0).toString(16).padStart(2, '0')}` };
  }
}

/** The first byte that is not UTF-8, found by halves: each longest good beginning decodes. */
function firstBadByte(bytes: Buffer): number {
  const begins = (length: number): boolean => {
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(skipped, length), { stream: true });
      return true;
    } catch {
      return false;
    }
  };
  // A character that began in the chunk before may end here.
  let skipped = 0;
  while (skipped < 3 && ((bytes[skipped] ?? 0) & 0xc0) === 0x80) skipped += 1;
  let good = skipped;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (begins(middle)) good = middle;
    else bad = middle;
  }
  return begins(bytes.length) ? 0 : good;
}
