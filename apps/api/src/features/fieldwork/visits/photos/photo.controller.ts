import { pipeline } from 'node:stream/promises';
import { Controller, Get, Param, Put, Res } from '@nestjs/common';
import type { Response } from 'express';
import { FileStore } from '../../../../platform/files/file-store.js';
import { receiveBytes } from '../../../../platform/files/receive-bytes.js';
import { Allow } from '../../../../platform/identity/allow.js';
import { Permission } from '../../../../platform/identity/permission.js';
import type { RequestScope } from '../../../../platform/identity/request-scope.js';
import { Scope } from '../../../../platform/identity/tx.js';
import { fieldworkProblems } from '../../fieldwork.problems.js';
import { KeepPicture, type KeptPicture } from './keep-picture.service.js';

/** The pictures of photos. A PUT with a session's cookie cannot come from a page of another site unasked. */
@Controller('api/photos')
export class PhotoController {
  constructor(
    private readonly keeping: KeepPicture,
    private readonly files: FileStore,
  ) {}

  /** Takes the picture of a photo that was told of: the bytes alone, JPEG, PNG or WebP. */
  @Allow(Permission.RecordFieldwork)
  @Put(':id')
  async keep(@Scope() scope: RequestScope, @Param('id') id: string): Promise<KeptPicture> {
    const photo = await this.keeping.find(scope, id);
    // The picture may come slowly: no transaction waits for it.
    await scope.become(scope.actor);
    return this.keeping.run(scope, photo, await receiveBytes(scope.request));
  }

  /** The picture as it is kept. */
  @Allow(Permission.ReadRoutes)
  @Get(':id')
  async one(@Scope() scope: RequestScope, @Param('id') id: string, @Res() response: Response): Promise<void> {
    const photo = await this.keeping.find(scope, id);
    if (!photo.fileSha256) throw fieldworkProblems.pictureNotHere({ photoId: photo.id });
    await scope.become(scope.actor);
    response.setHeader('Content-Type', 'image/jpeg');
    response.setHeader('Content-Disposition', `inline; filename="${photo.id}.jpg"`);
    response.setHeader('Cache-Control', 'private, no-cache');
    response.setHeader('ETag', `"${photo.fileSha256}"`);
    if (photo.fileBytes) response.setHeader('Content-Length', photo.fileBytes);
    await pipeline(this.files.read(photo.organizationId, photo.fileSha256), response);
  }
}
