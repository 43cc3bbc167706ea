import sharp from 'sharp';
import { expect, it, vi } from 'vitest';
import { placeOfPicture } from '../../../apps/web/src/features/fieldwork/device/picture/place-of-picture.js';

// The pictures and what is in them are written by libvips and libexif, which know nothing of the reader.
const plain = () => sharp({ create: { width: 8, height: 8, channels: 3, background: 'black' } });
const bytesOf = (buffer: Buffer): ArrayBuffer => new Uint8Array(buffer).buffer;
const taken = async (gps: Record<string, string>): Promise<ArrayBuffer> =>
  bytesOf(
    await plain()
      .withExif({ IFD0: { Make: 'An invented maker' }, IFD3: gps })
      .jpeg()
      .toBuffer(),
  );
const north = { GPSLatitudeRef: 'N', GPSLatitude: '38/1 32/1 3000/100' };
const west = { GPSLongitudeRef: 'W', GPSLongitude: '121/1 45/1 0/1' };

it('reads where a camera says that it was, south and west of the noughts below them', async () => {
  // 38° 32′ 30″ is 38 + 32/60 + 30/3600.
  const place = await placeOfPicture(await taken({ ...north, ...west }));
  expect(place?.latitude).toBeCloseTo(38.541_667, 6);
  expect(place?.longitude).toBeCloseTo(-121.75, 9);
  const other = await placeOfPicture(await taken({ ...north, GPSLatitudeRef: 'S', ...west, GPSLongitudeRef: 'E' }));
  expect(other?.latitude).toBeCloseTo(-38.541_667, 6);
  expect(other?.longitude).toBeCloseTo(121.75, 9);
});

it('names no place where the camera named none, half of one, or one that cannot be', async () => {
  expect(await placeOfPicture(bytesOf(await plain().jpeg().toBuffer()))).toBeNull();
  expect(await placeOfPicture(bytesOf(await plain().png().toBuffer()))).toBeNull();
  expect(await placeOfPicture(await taken(north))).toBeNull();
  expect(await placeOfPicture(await taken({ ...north, GPSLatitude: '91/1 0/1 0/1', ...west }))).toBeNull();
  expect(await placeOfPicture(await taken({ ...north, GPSLatitude: '0/1 0/1 0/1', ...west, GPSLongitude: '0/1 0/1 0/1' }))).toBeNull();
});

it('names none in a picture that was cut anywhere', async () => {
  const whole = await taken({ ...north, ...west });
  // The Exif segment comes first; cut before its end the place is not there.
  for (let end = 0; end < 120; end += 1) expect(await placeOfPicture(whole.slice(0, end))).toBeNull();
});

it('names none where its reader cannot be had, so that the photo is kept', async () => {
  const reader = 'exifr/dist/mini.esm.mjs';
  vi.doMock(reader, () => {
    throw new TypeError('Failed to fetch dynamically imported module');
  });
  vi.resetModules();
  const apart = await import('../../../apps/web/src/features/fieldwork/device/picture/place-of-picture.js');
  expect(await apart.placeOfPicture(await taken({ ...north, ...west }))).toBeNull();
  vi.doUnmock(reader);
});
