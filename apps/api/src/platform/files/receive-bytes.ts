import type { Request } from 'express';
import { filesProblems } from './files.problems.js';

/** What is taken for one picture. A phone sends about 0.3 MB. */
const MOST_BYTES = 15 * 1024 * 1024;

/** The body of a request, whole, or a problem when it is too large or breaks off. */
export async function receiveBytes(request: Request): Promise<Buffer> {
  const tooLarge = () => filesProblems.pictureTooLarge({ most: `${MOST_BYTES / 1024 ** 2} MB` });
  if (Number(request.headers['content-length'] ?? 0) > MOST_BYTES) throw tooLarge();
  const pieces: Buffer[] = [];
  let total = 0;
  try {
    for await (const piece of request as AsyncIterable<Buffer>) {
      total += piece.length;
      if (total > MOST_BYTES) break;
      pieces.push(piece);
    }
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code === 'ECONNRESET' || request.destroyed) throw filesProblems.pictureBroken({});
    throw problem;
  }
  if (total > MOST_BYTES) throw tooLarge();
  return Buffer.concat(pieces);
}
