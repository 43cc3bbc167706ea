/** Where a picture was taken, as its camera wrote it. [degrees, WGS 84] */
export interface PictureTaken {
  readonly latitude: number;
  readonly longitude: number;
}

// Markers and tags: CIPA DC-008 (Exif 2.32), 4.5.4, 4.6.3 and 4.6.6, and TIFF 6.0, section 2.
const START_OF_IMAGE = 0xff_d8;
const START_OF_SCAN = 0xff_da;
const APP1 = 0xff_e1;
const EXIF = 'Exif\u0000\u0000';
const LITTLE_ENDIAN = 0x49_49;
const GPS_IFD = 0x88_25;
const ENTRY_BYTES = 12;
const TAG = { latitudeRef: 1, latitude: 2, longitudeRef: 3, longitude: 4 } as const;
const MOST = { latitude: 90, longitude: 180 } as const;

/** The place in a JPEG; null where it names none, or one that cannot be, and for other kinds of picture. */
export function placeOfPicture(bytes: ArrayBuffer): PictureTaken | null {
  try {
    const tiff = exifOf(new DataView(bytes));
    return tiff && placeIn(new Directories(tiff));
  } catch (problem) {
    // A directory that points beyond its end is one that a camera broke: it names no place.
    if (problem instanceof RangeError) return null;
    throw problem;
  }
}

/** The TIFF structure within the first Exif segment. */
function exifOf(view: DataView): DataView | null {
  if (view.byteLength < 4 || view.getUint16(0) !== START_OF_IMAGE) return null;
  for (let at = 2; at + 4 <= view.byteLength; ) {
    const marker = view.getUint16(at);
    if (marker < 0xff_00 || marker === START_OF_SCAN) return null;
    const length = view.getUint16(at + 2);
    const begin = at + 4 + EXIF.length;
    if (marker === APP1 && textAt(view, at + 4, EXIF.length) === EXIF)
      return new DataView(view.buffer, view.byteOffset + begin, length - 2 - EXIF.length);
    at += 2 + length;
  }
  return null;
}

const textAt = (view: DataView, at: number, length: number): string =>
  String.fromCodePoint(...Array.from({ length }, (_, nth) => view.getUint8(at + nth)));

/** Reads entries by tag from the directories of a TIFF structure. */
class Directories {
  private readonly isLittle: boolean;

  constructor(private readonly tiff: DataView) {
    this.isLittle = tiff.getUint16(0) === LITTLE_ENDIAN;
  }

  get gps(): number | null {
    const entry = this.entry(this.tiff.getUint32(4, this.isLittle), GPS_IFD);
    return entry === null ? null : this.tiff.getUint32(entry + 8, this.isLittle);
  }

  /** The letter of a direction, which stands in the entry itself. */
  letter(directory: number, tag: number): string | null {
    const entry = this.entry(directory, tag);
    return entry === null ? null : textAt(this.tiff, entry + 8, 1);
  }

  /** Degrees, minutes and seconds, each a fraction. [degrees] */
  degrees(directory: number, tag: number): number | null {
    const entry = this.entry(directory, tag);
    if (entry === null) return null;
    const at = this.tiff.getUint32(entry + 8, this.isLittle);
    const [degrees, minutes, seconds] = [0, 1, 2].map((nth) => this.fraction(at + nth * 8));
    return degrees! + minutes! / 60 + seconds! / 3600;
  }

  private fraction(at: number): number {
    const [above, below] = [this.tiff.getUint32(at, this.isLittle), this.tiff.getUint32(at + 4, this.isLittle)];
    // Zero of zero is how a camera leaves out what it does not count.
    return above === 0 ? 0 : above / below;
  }

  private entry(directory: number, tag: number): number | null {
    const count = this.tiff.getUint16(directory, this.isLittle);
    for (let nth = 0; nth < count; nth += 1) {
      const at = directory + 2 + nth * ENTRY_BYTES;
      if (this.tiff.getUint16(at, this.isLittle) === tag) return at;
    }
    return null;
  }
}

function placeIn(exif: Directories): PictureTaken | null {
  const { gps } = exif;
  if (gps === null) return null;
  const latitude = signed(exif.degrees(gps, TAG.latitude), exif.letter(gps, TAG.latitudeRef), ['N', 'S']);
  const longitude = signed(exif.degrees(gps, TAG.longitude), exif.letter(gps, TAG.longitudeRef), ['E', 'W']);
  if (latitude === null || longitude === null) return null;
  const isPossible = Math.abs(latitude) <= MOST.latitude && Math.abs(longitude) <= MOST.longitude;
  // A camera that had no fix writes noughts.
  return isPossible && !(latitude === 0 && longitude === 0) ? { latitude, longitude } : null;
}

function signed(degrees: number | null, letter: string | null, [plus, minus]: readonly [string, string]): number | null {
  if (degrees === null || !Number.isFinite(degrees)) return null;
  return letter === plus ? degrees : letter === minus ? -degrees : null;
}
