import { Injectable } from '@nestjs/common';
import { dateFormats } from '@rillbook/showing/formats/dates.js';
import type { GivenPhoto } from '@rillbook/showing/report/report-input.js';
import { FileStore } from '../../../platform/files/file-store.js';
import type { photosOfProperty } from '../../fieldwork/visits/photos/photos-of-property.loader.js';
import { dayIn } from './day-in.js';

type Photo = Awaited<ReturnType<ReturnType<typeof photosOfProperty.of>['load']>>[number];

const MOST_OF_WORK = 4;

/** The words under a picture, by its kind. */
const ALT = {
  en: { before: 'Before the work', after: 'After the work' },
  es: { before: 'Antes del trabajo', after: 'Después del trabajo' },
} as const;

/** Pictures of work, before and after, as a report shows them. */
@Injectable()
export class GivenPhotos {
  constructor(private readonly files: FileStore) {}

  /** Those of each work order whose picture has arrived, before first. */
  async ofOrders(photos: readonly Photo[], language: 'en' | 'es', timeZone: string): Promise<Map<string, GivenPhoto[]>> {
    const given = new Map<string, GivenPhoto[]>();
    const wanted = photos.filter(
      ({ kind, fileSha256, workOrderId }) => workOrderId && fileSha256 && (kind === 'before' || kind === 'after'),
    );
    const inOrder = [...wanted].sort((a, b) => b.kind.localeCompare(a.kind) || a.takenAt.getTime() - b.takenAt.getTime());
    for (const photo of inOrder) {
      const list = given.get(photo.workOrderId!) ?? [];
      if (list.length >= MOST_OF_WORK) continue;
      const bytes = await this.bytesOf(photo.organizationId, photo.fileSha256!);
      const said = ALT[language][photo.kind as 'before' | 'after'];
      const takenOn = dateFormats(language, timeZone).dayOfYear(dayIn(timeZone, photo.takenAt));
      given.set(photo.workOrderId!, [
        ...list,
        {
          dataUrl: `data:image/jpeg;base64,${bytes.toString('base64')}`,
          alt: [said, photo.word].filter(Boolean).join(': '),
          takenOn: `${said}, ${takenOn}`,
        },
      ]);
    }
    return given;
  }

  private async bytesOf(organizationId: string, name: string): Promise<Buffer> {
    const pieces: Buffer[] = [];
    for await (const piece of this.files.read(organizationId, name)) pieces.push(piece as Buffer);
    return Buffer.concat(pieces);
  }
}
