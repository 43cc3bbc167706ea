import { createHash, randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Somebody, type TestApp, startApp } from '../../support/test-app.js';
import { type FieldDay, fieldDay } from './field-day.js';

// What is refused and taken away: OWASP File Upload Cheat Sheet (allow-list by content, a name of our own, limits) and ASVS 5.0, 5.2.

let product: TestApp;
let day: FieldDay;
let visitId: string;
let stopOfVisit: string;
let folder: string;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'rillbook-photos-'));
  process.env['DATA_DIR'] = folder;
  product = await startApp();
  day = await fieldDay(product);
  const { id: propertyId } = await day.property();
  const { stopId } = await day.given({ propertyId }, '2026-07-06');
  stopOfVisit = stopId!;
  const input = { deviceRecordId: randomUUID(), stopId, arrivedAt: '2026-07-06T15:00:00Z' };
  visitId = (await day.technician.send('mutation($input: VisitInput!) { arrive(input: $input) { id } }', { input })).data.arrive.id;
});
afterAll(async () => {
  await product.close();
  delete process.env['DATA_DIR'];
  rmSync(folder, { recursive: true, force: true });
});

const announce = (who: Somebody, input: Record<string, unknown> = {}) =>
  who.send('mutation($input: PhotoInput!) { announcePhoto(input: $input) { id kind visitId arrivedAt width } }', {
    input: { id: randomUUID(), visitId, kind: 'seen', takenAt: '2026-07-06T15:05:00Z', ...input },
  });
const announced = async (): Promise<string> => (await announce(day.technician)).data.announcePhoto.id;

async function put(who: Somebody, id: string, bytes: Buffer): Promise<{ status: number; body: Record<string, unknown> }> {
  const response = await fetch(`${product.url}/api/photos/${id}`, {
    method: 'PUT',
    headers: { cookie: who.cookie, 'content-type': 'image/jpeg' },
    body: new Uint8Array(bytes),
  });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
}
const get = (who: Somebody, id: string) => fetch(`${product.url}/api/photos/${id}`, { headers: { cookie: who.cookie } });

const points = (width: number, height: number) => sharp({ create: { width, height, channels: 3, background: { r: 90, g: 120, b: 60 } } });
/** As a phone writes it: turned, with place and maker. */
const fromPhone = () =>
  points(400, 300)
    .withExif({
      IFD0: { Make: 'An invented maker', Orientation: '6' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '38/1 32/1 0/1', GPSLongitudeRef: 'W', GPSLongitude: '121/1 45/1 0/1' },
    })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();
const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

it('keeps where a photo was taken where that is wanted, beside it and never in the file, and not where it is not', async () => {
  const asked = () =>
    day.office.send('query($id: ID!) { stop(id: $id) { visit { photos { id latitude longitude } } } }', { id: stopOfVisit });
  const place = { latitude: 38.533_333, longitude: -121.75 };
  const wanted = (await announce(day.technician, place)).data.announcePhoto.id as string;
  const plain = await announced();
  for (const id of [wanted, plain]) {
    expect((await put(day.technician, id, await fromPhone())).status).toBe(200);
    const shown = Buffer.from(await (await get(day.office, id)).arrayBuffer());
    expect((await sharp(shown).metadata()).exif).toBeUndefined();
  }
  const { photos } = (await asked()).data.stop.visit;
  expect(photos).toEqual(
    expect.arrayContaining([
      { id: wanted, ...place },
      { id: plain, latitude: null, longitude: null },
    ]),
  );
  for (const refused of [{ latitude: 91, longitude: 0 }, { latitude: 38 }, { longitude: 181, latitude: 0 }])
    expect((await announce(day.technician, refused)).errors).toMatchObject([{ extensions: { code: 'VALUE_REFUSED' } }]);
});

it('keeps a photo once: told of first, its picture after, upright and without what the camera wrote beside it', async () => {
  const first = (await announce(day.technician)).data.announcePhoto;
  expect(first).toMatchObject({ kind: 'seen', visitId, arrivedAt: null, width: null });
  expect((await (await get(day.office, first.id)).json()) as object).toMatchObject({ code: 'PICTURE_NOT_HERE' });
  const bytes = await fromPhone();
  expect((await sharp(bytes).metadata()).exif).toBeDefined();
  const kept = { status: 200, body: { id: first.id, sentSha256: sha256(bytes) } };
  expect(await put(day.technician, first.id, bytes)).toEqual(kept);
  expect(await put(day.technician, first.id, bytes)).toEqual(kept);
  expect(await put(day.technician, first.id, await points(20, 20).jpeg().toBuffer())).toMatchObject({
    status: 409,
    body: { code: 'PICTURE_CONFLICT' },
  });
  const answer = await get(day.office, first.id);
  expect(answer.headers.get('content-type')).toBe('image/jpeg');
  expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  const shown = Buffer.from(await answer.arrayBuffer());
  const { exif, width, height, format } = await sharp(shown).metadata();
  expect({ exif, width, height, format }).toEqual({ exif: undefined, width: 300, height: 400, format: 'jpeg' });
  expect(shown.includes('An invented maker')).toBe(false);
  const [row] = await product.database.admin<{ file: string }>('select file_sha256 as file from photo where id = $1', [first.id]);
  const place = path.join(folder, 'rillbook-files', day.organizationId, row!.file.slice(0, 2));
  expect(readdirSync(place)).toEqual([row!.file]);
  expect(sha256(shown)).toBe(row!.file);
  const { photos } = (
    await day.office.send('query($id: ID!) { property(id: $id) { visits { photos { id width height } } } }', {
      id: await propertyOf(first.id),
    })
  ).data.property.visits[0];
  expect(photos).toContainEqual({ id: first.id, width: 300, height: 400 });
});

async function propertyOf(photoId: string): Promise<string> {
  return (await product.database.admin<{ id: string }>('select property_id as id from photo where id = $1', [photoId]))[0]!.id;
}

it('tells of the same photo again, and says when the name comes with another content', async () => {
  const id = await announced();
  expect((await announce(day.technician, { id })).data.announcePhoto.id).toBe(id);
  expect((await announce(day.technician, { id, kind: 'before' })).errors[0]!.extensions).toMatchObject({ code: 'PHOTO_CONFLICT' });
  expect((await announce(day.technician, { kind: 'dog' })).errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED' });
  expect((await announce(day.technician, { id: 'one' })).errors[0]!.extensions).toMatchObject({ code: 'VALUE_REFUSED' });
});

it('keeps the same picture once when it is delivered five times at once', async () => {
  const id = await announced();
  const bytes = await points(64, 48).png().toBuffer();
  const answers = await Promise.all(Array.from({ length: 5 }, () => put(day.technician, id, bytes)));
  expect(answers.map(({ status }) => status)).toEqual([200, 200, 200, 200, 200]);
  expect((await get(day.technician, id)).headers.get('content-type')).toBe('image/jpeg');
});

it('refuses what is no picture, whatever it calls itself, and keeps nothing of it', async () => {
  const id = await announced();
  const jpeg = await points(300, 300).jpeg().toBuffer();
  const flood = await sharp({ create: { width: 9000, height: 9000, channels: 3, background: 'black' } })
    .png()
    .toBuffer();
  const refused: readonly (readonly [string, Buffer, string])[] = [
    ['nothing', Buffer.alloc(0), 'NOT_A_PICTURE'],
    ['SVG', Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'), 'NOT_A_PICTURE'],
    ['PDF', Buffer.from('%PDF-1.7\n'), 'NOT_A_PICTURE'],
    ['GIF', Buffer.from('GIF89a\u0001\u0000\u0001\u0000', 'latin1'), 'NOT_A_PICTURE'],
    ['a page', Buffer.from('<!doctype html><script>1</script>'), 'NOT_A_PICTURE'],
    ['half a picture', jpeg.subarray(0, jpeg.length - 200), 'PICTURE_BROKEN'],
    ['a beginning only', Buffer.concat([jpeg.subarray(0, 4), Buffer.from('<svg/>')]), 'PICTURE_BROKEN'],
    ['a flood of points', flood, 'PICTURE_TOO_WIDE'],
    ['too many bytes', Buffer.concat([jpeg, Buffer.alloc(16 * 1024 * 1024)]), 'PICTURE_TOO_LARGE'],
  ];
  for (const [name, bytes, code] of refused) expect((await put(day.technician, id, bytes)).body, name).toMatchObject({ code });
  expect((await get(day.technician, id)).status).toBe(404);
  expect((await put(day.technician, id, jpeg)).status).toBe(200);
});

it('shows a photo to nobody but the office and its crew', async () => {
  const id = await announced();
  const bytes = await points(30, 30).webp().toBuffer();
  const client = await product.somebody(day.organizationId, 'client', day.clientId);
  const otherOwner = await product.somebody(await product.organization(), 'owner');
  for (const who of [day.stranger, otherOwner])
    expect(await put(who, id, bytes)).toMatchObject({ status: 404, body: { code: 'NOT_FOUND' } });
  expect((await put(client, id, bytes)).status).toBe(403);
  expect((await put(day.lead, id, bytes)).status).toBe(200);
  for (const who of [day.stranger, otherOwner]) expect((await get(who, id)).status).toBe(404);
  expect((await get(client, id)).status).toBe(403);
});
