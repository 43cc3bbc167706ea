// JSON values as few bytes: an account has the same keys in each of its zones and gaps, the same ids, and numbers of eight bytes that are
// eighteen letters as text. A key list, a text or an id is written once in a value and named by its place after that.

/** The first byte says that it is packed, and how; JSON text begins otherwise, and is read too. */
const PACKED = 1;

const Kind = { null: 0, true: 1, false: 2, float: 3, integer: 4, text: 5, id: 6, known: 7, array: 8, newShape: 9, shape: 10 } as const;

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const ID_BYTES = 16;
const ID_LETTERS = 36;
const ROOM = 1 << 16;
const LARGEST_INTEGER = 2 ** 31;
/** The most that seven bits hold. */
const MOST_OF_A_BYTE = 127;

let room = Buffer.allocUnsafeSlow(ROOM);
let view = new DataView(room.buffer);

const DASH = 45;
const FIRST_LETTER = 97;
const FIRST_DIGIT = 48;

/** The value of a hexadecimal digit by its character code. */
const digitOf = (code: number): number => (code >= FIRST_LETTER ? code - FIRST_LETTER + 10 : code - FIRST_DIGIT);

/** A list of keys as a way through a tree: where it ends stands the list's place in the value that was packed last with it. */
interface Shape {
  place: number;
  /** the number of that packing; 0 for none */
  packing: number;
  readonly next: Map<string, Shape>;
}

const shapeOf = (): Shape => ({ place: -1, packing: 0, next: new Map() });

/** Values of one kind come again and again: their lists of keys stay known, but not without end. */
const MOST_SHAPES = 4096;
let [shapes, shapesKnown] = [shapeOf(), 0];
let packings = 0;

function nextShape(shape: Shape, key: string): Shape {
  const present = shape.next.get(key);
  if (present) return present;
  const made = shapeOf();
  shape.next.set(key, made);
  shapesKnown += 1;
  return made;
}

function isSame(one: readonly string[] | undefined, other: readonly string[]): boolean {
  if (one?.length !== other.length) return false;
  for (let at = 0; at < other.length; at += 1) if (one[at] !== other[at]) return false;
  return true;
}

class Packing {
  private at = 0;
  private readonly nth = (packings += 1);
  private readonly texts = new Map<string, number>();
  private readonly keysOf: (readonly string[])[] = [];
  /** by the last key list's place and one, 0 being the beginning */
  private readonly follows: number[] = [];
  private last = 0;

  /** Gives what was packed, in bytes of its own. */
  done(value: unknown): Buffer {
    if (shapesKnown > MOST_SHAPES) [shapes, shapesKnown] = [shapeOf(), 0];
    this.byte(PACKED);
    this.value(value);
    return Buffer.from(room.subarray(0, this.at));
  }

  private value(value: unknown): void {
    if (typeof value === 'number') this.number(value);
    else if (typeof value === 'string') this.text(value);
    else if (value === null || value === undefined) this.byte(Kind.null);
    else if (typeof value === 'boolean') this.byte(value ? Kind.true : Kind.false);
    else if (Array.isArray(value)) this.array(value);
    else this.object(value as Record<string, unknown>);
  }

  private number(value: number): void {
    if (!Number.isFinite(value)) return this.byte(Kind.null);
    if (Number.isInteger(value) && value >= 0 && value < LARGEST_INTEGER) {
      this.byte(Kind.integer);
      return this.length(value);
    }
    this.byte(Kind.float);
    this.ask(8);
    view.setFloat64(this.at, value, true);
    this.at += 8;
  }

  private text(value: string): void {
    const present = this.texts.get(value);
    if (present !== undefined) {
      this.byte(Kind.known);
      return this.length(present);
    }
    this.texts.set(value, this.texts.size);
    if (value.length === ID_LETTERS && ID.test(value)) {
      this.byte(Kind.id);
      return this.id(value);
    }
    this.byte(Kind.text);
    this.letters(value);
  }

  private id(value: string): void {
    this.ask(ID_BYTES);
    for (let letter = 0; letter < value.length; letter += 2) {
      if (value.charCodeAt(letter) === DASH) letter += 1;
      room[this.at] = 16 * digitOf(value.charCodeAt(letter)) + digitOf(value.charCodeAt(letter + 1));
      this.at += 1;
    }
  }

  private array(values: readonly unknown[]): void {
    this.byte(Kind.array);
    this.length(values.length);
    for (const value of values) this.value(value);
  }

  private object(object: Record<string, unknown>): void {
    const all = Object.keys(object);
    const keys = all.every((key) => object[key] !== undefined) ? all : all.filter((key) => object[key] !== undefined);
    const place = this.placeOf(keys);
    if (place === this.keysOf.length) {
      this.keysOf.push(keys);
      this.byte(Kind.newShape);
      this.length(keys.length);
      for (const key of keys) this.letters(key);
    } else {
      this.byte(Kind.shape);
      this.length(place);
    }
    for (const key of keys) this.value(object[key]);
  }

  /** The place of a key list, that of a new one being their number; mostly the list that followed the last one when it stood before. */
  private placeOf(keys: readonly string[]): number {
    const guessed = this.follows[this.last];
    let place = guessed ?? 0;
    if (guessed === undefined || !isSame(this.keysOf[guessed], keys)) {
      const shape = keys.reduce(nextShape, shapes);
      if (shape.packing !== this.nth) shape.place = this.keysOf.length;
      shape.packing = this.nth;
      place = shape.place;
      this.follows[this.last] = place;
    }
    this.last = place + 1;
    return place;
  }

  private letters(value: string): void {
    if (this.plainLetters(value)) return;
    const bytes = Buffer.byteLength(value);
    this.length(bytes);
    this.ask(bytes);
    this.at += room.write(value, this.at, 'utf8');
  }

  /** Letters of one byte each, as nearly all texts are; where one is not, nothing is written. */
  private plainLetters(value: string): boolean {
    if (value.length > MOST_OF_A_BYTE) return false;
    this.ask(1 + value.length);
    for (let letter = 0; letter < value.length; letter += 1) {
      const code = value.charCodeAt(letter);
      if (code > MOST_OF_A_BYTE) return false;
      room[this.at + 1 + letter] = code;
    }
    room[this.at] = value.length;
    this.at += 1 + value.length;
    return true;
  }

  /** Seven bits to a byte, the lowest first. */
  private length(value: number): void {
    let left = value;
    while (left > MOST_OF_A_BYTE) {
      this.byte((left & 127) | 128);
      left >>>= 7;
    }
    this.byte(left);
  }

  private byte(value: number): void {
    this.ask(1);
    room[this.at] = value;
    this.at += 1;
  }

  private ask(bytes: number): void {
    if (this.at + bytes <= room.length) return;
    const larger = Buffer.allocUnsafeSlow(2 * (this.at + bytes));
    room.copy(larger, 0, 0, this.at);
    room = larger;
    view = new DataView(room.buffer);
  }
}

const PLAIN = { writable: true, enumerable: true, configurable: true } as const;

class Unpacking {
  private at = 1;
  private readonly texts: string[] = [];
  private readonly shapes: (readonly string[])[] = [];

  constructor(private readonly from: Buffer) {}

  value(): unknown {
    const kind = this.from[this.at++]!;
    switch (kind) {
      case Kind.float:
        this.at += 8;
        return this.from.readDoubleLE(this.at - 8);
      case Kind.integer:
        return this.length();
      case Kind.array:
        return Array.from({ length: this.length() }, () => this.value());
      case Kind.newShape:
      case Kind.shape:
        return this.object(kind);
      default:
        return kind > Kind.integer ? this.text(kind) : kind === Kind.null ? null : kind === Kind.true;
    }
  }

  private text(kind: number): string {
    if (kind === Kind.known) return this.texts[this.length()]!;
    const text = kind === Kind.id ? this.id() : this.letters();
    this.texts.push(text);
    return text;
  }

  private id(): string {
    const hex = this.from.toString('hex', this.at, this.at + ID_BYTES);
    this.at += ID_BYTES;
    return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
  }

  private object(kind: number): Record<string, unknown> {
    if (kind === Kind.newShape) this.shapes.push(Array.from({ length: this.length() }, () => this.letters()));
    const shape = kind === Kind.newShape ? this.shapes.at(-1)! : this.shapes[this.length()]!;
    const object: Record<string, unknown> = {};
    // A key that is not a property of its own when it is set would be lost.
    for (const key of shape) {
      if (key === '__proto__') Object.defineProperty(object, key, { value: this.value(), ...PLAIN });
      else object[key] = this.value();
    }
    return object;
  }

  private letters(): string {
    const bytes = this.length();
    this.at += bytes;
    return this.from.toString('utf8', this.at - bytes, this.at);
  }

  private length(): number {
    let value = 0;
    for (let shift = 0; ; shift += 7) {
      const byte = this.from[this.at++]!;
      value += (byte & 127) * 2 ** shift;
      if (byte < 128) return value;
    }
  }
}

/** A JSON value in few bytes; the same value as its JSON text, to the last bit of each number. */
export const packed = (value: unknown): Buffer => new Packing().done(value);

/** What was packed; JSON text is read as such. */
export const unpacked = (bytes: Buffer): unknown =>
  bytes[0] === PACKED ? new Unpacking(bytes).value() : JSON.parse(bytes.toString('utf8'));
