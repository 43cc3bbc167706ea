import { Injectable } from '@nestjs/common';
import { cleanPicture } from '../../../../platform/files/clean-picture.js';
import { FileStore, nameOfBytes } from '../../../../platform/files/file-store.js';
import type { RequestScope } from '../../../../platform/identity/request-scope.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import type { PhotoRow } from './photo.entity.js';
import { photos } from './photo.repository.js';

/** What the phone is told: only when these are the bytes that it sent may it forget the picture. */
export interface KeptPicture {
  readonly id: string;
  readonly sentSha256: string;
}

/** Keeps the picture of a photo that was told of: once, cleaned, and the same bytes again are the same. */
@Injectable()
export class KeepPicture {
  constructor(private readonly files: FileStore) {}

  /** The photo, before its picture is read; absent and not the actor's are the same answer. */
  async find(scope: RequestScope, id: string): Promise<PhotoRow> {
    const photo = await photos.seen(await scope.open(), id);
    if (!photo) throw platformProblems.notFound({ thing: 'photo', id });
    return photo;
  }

  async run(scope: RequestScope, photo: PhotoRow, bytes: Buffer): Promise<KeptPicture> {
    const sentSha256 = nameOfBytes(bytes);
    if (photo.sentSha256) return again(photo, sentSha256);
    const picture = await cleanPicture(bytes);
    const fileSha256 = await this.files.put(photo.organizationId, picture.bytes);
    const tx = await scope.open();
    const { width, height } = picture;
    const arrived = { arrivedAt: new Date(), sentSha256, fileSha256, fileBytes: picture.bytes.length, width, height };
    if (await photos.arrive(tx, photo.id, arrived)) return { id: photo.id, sentSha256 };
    // Another delivery of it was faster.
    return again((await photos.ofId(tx, photo.id))!, sentSha256);
  }
}

function again(photo: PhotoRow, sentSha256: string): KeptPicture {
  if (photo.sentSha256 !== sentSha256) throw fieldworkProblems.pictureConflict({ photoId: photo.id });
  return { id: photo.id, sentSha256 };
}
