import type { Post } from '../../../../offline/sender.js';
import type { FiledOperation, UnsentFile } from './read-unsent-file.js';

/** What came of a phone's file. */
export interface SentFile {
  readonly taken: number;
  readonly refused: number;
  readonly photos: number;
  /** pictures that the file should have and the server did not get */
  readonly photosLeft: number;
  readonly drafts: number;
  /** whether the server stopped answering: the file may be given again, nothing is taken twice */
  readonly isCut: boolean;
}

const MOST_AT_ONCE = 64;
const NOTHING_WAITS = { waiting: 0, photos: 0, refused: 0, underWay: 0, oldestAt: null };

/** Sends a phone's file as the phone would have: text in the order in which it was saved, then pictures one by one. */
export async function sendFile(post: Post, file: UnsentFile): Promise<SentFile> {
  const inOrder = [...file.operations].sort((one, other) => one.operation.seq - other.operation.seq);
  const verdicts: string[] = [];
  for (let at = 0; at < inOrder.length; ) {
    const batch = inOrder.slice(at, at + MOST_AT_ONCE);
    const told = await sendBatch(post, file.deviceId, batch);
    verdicts.push(...told);
    at += batch.length;
    if (told.length < batch.length) return { ...counted(verdicts, file), photos: 0, photosLeft: picturesOf(inOrder).length, isCut: true };
  }
  const wanted = picturesOf(inOrder);
  let photos = 0;
  for (const { operation, picture } of wanted) if (picture && (await post.picture(operation, picture)).kind === 'kept') photos += 1;
  return { ...counted(verdicts, file), photos, photosLeft: wanted.length - photos, isCut: false };
}

const counted = (verdicts: readonly string[], { drafts }: UnsentFile) => {
  const refused = verdicts.filter((verdict) => verdict === 'refused').length;
  return { taken: verdicts.length - refused, refused, drafts };
};

const picturesOf = (operations: readonly FiledOperation[]): readonly FiledOperation[] =>
  operations.filter(({ operation: { picture } }) => picture === 'here' || picture === 'refused');

/** The verdicts of a batch; fewer than it holds where the server stopped answering. What it breaks on is found by sending each alone. */
async function sendBatch(post: Post, deviceId: string, batch: readonly FiledOperation[]): Promise<readonly string[]> {
  const operations = batch.map(({ operation }) => operation);
  // What is sent is taken off what waits on the phone; nothing is left there.
  const delivered = await post.operations(deviceId, operations, { ...NOTHING_WAITS, waiting: operations.length });
  if (delivered.kind === 'answered') return delivered.verdicts.map(({ verdict }) => verdict);
  if (delivered.kind === 'unanswered') return [];
  if (batch.length === 1) return ['refused'];
  const verdicts: string[] = [];
  for (const one of batch) {
    const told = await sendBatch(post, deviceId, [one]);
    if (told.length === 0) return verdicts;
    verdicts.push(...told);
  }
  return verdicts;
}
