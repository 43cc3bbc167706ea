/** Kinds of picture that are taken. */
export type PictureKind = 'jpeg' | 'png' | 'webp';

const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const JPEG = [0xff, 0xd8, 0xff];

const beginsWith = (bytes: Uint8Array, start: readonly number[], at = 0): boolean =>
  start.every((byte, index) => bytes[at + index] === byte);
const ascii = (text: string): number[] => [...text].map((letter) => letter.charCodeAt(0));

/**
 * What the first bytes say a picture is: a name or a header can say anything.
 *
 * JPEG: ISO/IEC 10918-1, B.1.1.3 (SOI, then a marker). PNG: ISO/IEC 15948, 5.2. WebP: RFC 9649, 2.4 (RIFF, size, WEBP).
 *
 * @returns the kind, or null for everything else, SVG and PDF among them
 */
export function pictureKind(bytes: Uint8Array): PictureKind | null {
  if (beginsWith(bytes, JPEG)) return 'jpeg';
  if (beginsWith(bytes, PNG)) return 'png';
  return beginsWith(bytes, ascii('RIFF')) && beginsWith(bytes, ascii('WEBP'), 8) ? 'webp' : null;
}
