import { createWriteStream } from 'node:fs';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import busboy from 'busboy';
import type { Request } from 'express';
import type { UploadedFile } from '../files/uploaded-files.js';
import { exchangeProblems } from '../import/directory/exchange.problems.js';
import type { UploadFolder } from './upload-folder.js';

/** What is taken at once. */
export const UPLOAD_LIMITS = { bytes: 200 * 1024 * 1024, files: 40 } as const;

const LIMITS = { files: UPLOAD_LIMITS.files, fields: 20, fieldSize: 1024, fieldNameSize: 200, headerPairs: 50 };

/** Takes the files of a request into an upload's folder as they come, never whole into memory. */
export async function receiveUpload(request: Request, folder: UploadFolder): Promise<UploadedFile[]> {
  const form = formOf(request);
  const files: UploadedFile[] = [];
  const total = { bytes: 0 };
  try {
    await new Promise<void>((resolve, reject) => {
      const written: Promise<void>[] = [];
      form.on('file', (_, stream, { filename }) => {
        if (!filename) return void stream.resume();
        const place = folder.newFile();
        files.push({ name: filename, path: place });
        const one = pipeline(stream, counting(total), createWriteStream(place, { mode: 0o600 }));
        one.catch(reject);
        written.push(one);
      });
      form.on('filesLimit', () => reject(exchangeProblems.uploadTooMany({ most: UPLOAD_LIMITS.files })));
      form.on('error', (problem: Error) => reject(exchangeProblems.uploadBroken({ says: problem.message })));
      request.on('close', () => !request.complete && reject(exchangeProblems.uploadBroken({ says: 'the connection closed' })));
      form.on('close', () => void Promise.all(written).then(() => resolve(), reject));
      request.pipe(form);
    });
  } catch (problem) {
    // What is still on its way is not looked at any more.
    request.unpipe(form);
    request.resume();
    throw problem;
  }
  if (!files.length) throw exchangeProblems.uploadEmpty({});
  return files;
}

function formOf(request: Request): busboy.Busboy {
  try {
    return busboy({ headers: request.headers, limits: LIMITS, defParamCharset: 'utf8' });
  } catch (problem) {
    throw exchangeProblems.notAnUpload({ found: problem instanceof Error ? problem.message : String(problem) });
  }
}

function counting(total: { bytes: number }): Transform {
  return new Transform({
    transform(piece: Buffer, _, done) {
      total.bytes += piece.length;
      if (total.bytes > UPLOAD_LIMITS.bytes) done(exchangeProblems.uploadTooLarge({ most: `${UPLOAD_LIMITS.bytes / 1024 ** 2} MB` }));
      else done(null, piece);
    },
  });
}
