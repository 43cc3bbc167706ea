import { platformProblems } from '../../../platform/problems/platform.problems.js';

const MOST_BYTES = 300_000;
const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const JPEG = Buffer.from([0xff, 0xd8, 0xff]);

const kindOf = (bytes: Buffer): 'png' | 'jpeg' | null => {
  if (bytes.subarray(0, PNG.length).equals(PNG)) return 'png';
  return bytes.subarray(0, JPEG.length).equals(JPEG) ? 'jpeg' : null;
};

/** A logo as a page shows it; what it is stands in its first bytes. */
export function dataUrlOf(logo: Buffer | null): string | null {
  const kind = logo && kindOf(logo);
  return logo && kind ? `data:image/${kind};base64,${logo.toString('base64')}` : null;
}

/** The bytes of a logo that was given; what is no picture, or too large, is refused. */
export function logoOf(dataUrl: string): Buffer {
  const [, base64] = /^data:image\/(?:png|jpeg);base64,([A-Za-z0-9+/=]+)$/.exec(dataUrl) ?? [];
  const bytes = Buffer.from(base64 ?? '', 'base64');
  if (kindOf(bytes) === null || bytes.length > MOST_BYTES)
    throw platformProblems.valueRefused({ field: 'logo', found: dataUrl.slice(0, 30), expected: 'a PNG or JPEG of at most 300 kB' });
  return bytes;
}
