import sharp from 'sharp';
import { filesProblems } from './files.problems.js';
import { pictureKind } from './picture-kind.js';

/** A picture as it is kept: JPEG, upright, without anything that the camera wrote beside the points. */
export interface CleanPicture {
  readonly bytes: Buffer;
  readonly width: number;
  readonly height: number;
}

/** As many points as a phone's camera takes, and some more: a small file may unpack to a flood. */
const MOST_POINTS = 60_000_000;
const MOST_SIDE = 2048;
const QUALITY = 82;

/**
 * Reads a picture to its end and writes it anew, so that place, device and time of the camera (EXIF, XMP, IPTC), hidden previews and
 * whatever hangs behind the picture are gone.
 *
 * @throws a problem of files when it is no picture, too wide, or broken
 */
export async function cleanPicture(bytes: Buffer): Promise<CleanPicture> {
  if (!pictureKind(bytes)) throw filesProblems.notAPicture({ found: bytes.length === 0 ? 'nothing' : 'other bytes' });
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: MOST_POINTS, failOn: 'error', sequentialRead: true })
      .autoOrient()
      .resize({ width: MOST_SIDE, height: MOST_SIDE, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: 'white' })
      .jpeg({ quality: QUALITY })
      .toBuffer({ resolveWithObject: true });
    return { bytes: data, width: info.width, height: info.height };
  } catch (problem) {
    if (problem instanceof Error && /pixel limit/i.test(problem.message))
      throw filesProblems.pictureTooWide({ most: `${MOST_POINTS / 1e6} million points` });
    if (problem instanceof Error) throw filesProblems.pictureBroken({});
    throw problem;
  }
}
