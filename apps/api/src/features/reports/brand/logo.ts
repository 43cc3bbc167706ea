import sharp from 'sharp';
import { platformProblems } from '../../../platform/problems/platform.problems.js';

const MOST_BYTES = 300_000;
/** A small file may unpack to a flood. */
const MOST_POINTS = 16_000_000;
/** As large as a head of paper shows at 300 points an inch: 80 by 11 mm, and room for a screen's. */
const MOST_WIDTH = 960;
const MOST_HEIGHT = 320;
const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const JPEG = Buffer.from([0xff, 0xd8, 0xff]);

const kindOf = (bytes: Buffer): 'png' | 'jpeg' | null => {
  if (bytes.subarray(0, PNG.length).equals(PNG)) return 'png';
  return bytes.subarray(0, JPEG.length).equals(JPEG) ? 'jpeg' : null;
};

const refused = (dataUrl: string, expected: string): Error =>
  platformProblems.valueRefused({ field: 'logo', found: dataUrl.slice(0, 30), expected });

/** A logo as a page shows it; what it is stands in its first bytes. */
export function dataUrlOf(logo: Buffer | null): string | null {
  const kind = logo && kindOf(logo);
  return logo && kind ? `data:image/${kind};base64,${logo.toString('base64')}` : null;
}

/**
 * The logo that was given, read to its end and written anew as PNG, no larger than a page shows it.
 *
 * @throws VALUE_REFUSED where it is no picture, too large, or broken: nothing is kept that would stop a report later
 */
export async function logoOf(dataUrl: string): Promise<Buffer> {
  const [, base64] = /^data:image\/(?:png|jpeg);base64,([A-Za-z0-9+/=]+)$/.exec(dataUrl) ?? [];
  const bytes = Buffer.from(base64 ?? '', 'base64');
  if (kindOf(bytes) === null || bytes.length > MOST_BYTES) throw refused(dataUrl, 'a PNG or JPEG of at most 300 kB');
  try {
    return await sharp(bytes, { limitInputPixels: MOST_POINTS, failOn: 'error' })
      .autoOrient()
      .resize({ width: MOST_WIDTH, height: MOST_HEIGHT, fit: 'inside', withoutEnlargement: true })
      .png()
      .toBuffer();
  } catch (problem) {
    if (problem instanceof Error && /pixel limit/i.test(problem.message))
      throw refused(dataUrl, `a picture of at most ${MOST_POINTS / 1e6} million points`);
    if (problem instanceof Error) throw refused(dataUrl, 'a PNG or JPEG that is whole: this one cannot be read to its end');
    throw problem;
  }
}
