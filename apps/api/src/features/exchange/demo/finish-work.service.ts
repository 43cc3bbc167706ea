import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { INestApplicationContext } from '@nestjs/common';
import sharp from 'sharp';
import { Temporal } from 'temporal-polyfill';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { cleanPicture } from '../../../platform/files/clean-picture.js';
import { FileStore, nameOfBytes } from '../../../platform/files/file-store.js';
import { organizations } from '../../../platform/identity/organizations/organization.repository.js';
import { MakeOrder } from '../../fieldwork/order-deeds/make-order.service.js';
import { DEMO_FOLDER, type DemoFinished, type DemoPhoto } from './demo-world.js';
import { demo } from './demo.repository.js';
import { demoWork } from './demo-work.repository.js';

/**
 * Keeps the work that crews of the demonstration had finished before its day: each order with when and how it was done, the finding that it
 * ended, and its pictures, drawn, before and after.
 *
 * @returns how many pieces of work were kept
 */
export async function finishWork(
  app: INestApplicationContext,
  tx: OrganizationTransaction,
  finished: readonly DemoFinished[],
): Promise<number> {
  const { timeZone } = await organizations.own(tx);
  const instant = (local: string): Date => new Date(Temporal.PlainDateTime.from(local).toZonedDateTime(timeZone).epochMilliseconds);
  for (const work of finished) {
    const { property, findingKinds, note, doneAt, by, photos, ...input } = work;
    const propertyId = await demo.propertyId(tx, property);
    const finding = await demoWork.endedFinding(tx, propertyId, findingKinds, doneAt.slice(0, 10));
    const order = await app
      .get(MakeOrder)
      .run(tx, { ...input, parts: input.parts?.map((part) => ({ ...part })) ?? null, propertyId }, finding);
    const done = { workOrderId: order.id, note, doneAt: instant(doneAt), findingId: finding?.id ?? null };
    await demoWork.finish(tx, done);
    const personId = await demoWork.personId(tx, by);
    for (const photo of photos) await keep(app, tx, photo, { ...done, propertyId, personId, takenAt: instant(photo.at) });
  }
  return finished.length;
}

type Shown = Parameters<typeof demoWork.addPhoto>[1]['of'];

/** A picture goes the way of one that a phone sends. */
async function keep(app: INestApplicationContext, tx: OrganizationTransaction, photo: DemoPhoto, of: Shown): Promise<void> {
  const drawn = await sharp(await readFile(path.join(DEMO_FOLDER, 'pictures', photo.picture)))
    .png()
    .toBuffer();
  const { bytes, width, height } = await cleanPicture(drawn);
  const fileSha256 = await app.get(FileStore).put(tx.organizationId, bytes);
  const file = { sentSha256: nameOfBytes(drawn), fileSha256, fileBytes: bytes.length, width, height };
  await demoWork.addPhoto(tx, { kind: photo.kind, word: photo.word, of, file });
}
