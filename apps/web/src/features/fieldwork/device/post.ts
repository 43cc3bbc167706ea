import type { ApolloClient } from '@apollo/client';
import { ServerError } from '@apollo/client/errors';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { SendFieldworkMutation } from '../../../graphql/__generated__/graphql.js';
import { problemOf } from '../../../graphql/problem.js';
import type { Delivered, DeliveredPicture, Post } from '../../../offline/sender.js';
import { ask } from './ask.js';

const sendFieldworkDocument = graphql(`
  mutation SendFieldwork($device: DeviceInput!, $operations: [OperationInput!]!) {
    sendFieldwork(device: $device, operations: $operations) {
      key
      verdict
      problem {
        code
        message
      }
      other
    }
  }
`);

const TOO_LARGE = 413;

/** Says nothing against what was sent: it waits, and goes again. */
const PASSING = ['SIGN_IN_NEEDED', 'BUSY'];

/** Where a line hangs nobody answers: so long is waited for an answer to what is small. [ms] */
const LEAST_MS = 30_000;
/** A quarter of 64 kbit/s: a line slower than this is taken for one that hangs. [B/s] */
const SLOWEST_BYTES_PER_S = 2000;

/** How long something of this size may be on its way before it is given up and sent again. [ms] */
const timeLimit = (bytes: number): number => LEAST_MS + (bytes / SLOWEST_BYTES_PER_S) * 1000;

/** What a thrown answer says of a delivery. */
function undelivered(thrown: unknown): Delivered {
  if (ServerError.is(thrown) && thrown.statusCode === TOO_LARGE) return { kind: 'too large' };
  const problem = problemOf(thrown);
  if (problem.kind === 'noAnswer' || PASSING.includes(problem.code)) return { kind: 'unanswered' };
  if (problem.code === 'BATCH_TOO_LARGE') return { kind: 'too large' };
  return { kind: 'failed', problem: { code: problem.code, message: problem.says } };
}

/** The way to the server: operations by GraphQL, pictures by HTTP. Nothing is waited for without end: what hangs is given up, and sent again. */
export const postOf = (
  client: ApolloClient,
  version: string,
  limitMs: (bytes: number) => number = timeLimit,
  nameOf: (deviceId: string) => string | null = () => null,
): Post => ({
  async operations(deviceId, batch, { waiting, photos, refused, oldestAt }): Promise<Delivered> {
    // What is on its way is not counted as what stays here.
    const device = {
      id: deviceId,
      name: nameOf(deviceId),
      appVersion: version,
      waiting: waiting - batch.length,
      photosWaiting: photos,
      refused,
      oldestWaitingAt: waiting - batch.length + refused > 0 ? oldestAt : null,
    };
    const operations = batch.map(({ key, seq, kind, payloadVersion, savedAt, body }) => ({
      key,
      seq,
      kind,
      payloadVersion,
      savedAt,
      body,
    }));
    try {
      const bytes = JSON.stringify(operations).length;
      const answer = (await ask(client, sendFieldworkDocument, { device, operations }, limitMs(bytes))) as SendFieldworkMutation;
      return {
        kind: 'answered',
        verdicts: answer.sendFieldwork.map(({ key, verdict, problem, other }) => ({
          key,
          verdict,
          problem: problem ? { code: problem.code, message: problem.message } : null,
          other: other ?? null,
        })),
      };
    } catch (thrown) {
      return undelivered(thrown);
    }
  },

  async picture({ key }, bytes): Promise<DeliveredPicture> {
    const giveUp = new AbortController();
    const limit = setTimeout(() => giveUp.abort(), limitMs(bytes.byteLength));
    try {
      const headers = { 'content-type': 'image/jpeg' };
      const response = await fetch(`/api/photos/${key}`, { method: 'PUT', body: bytes, headers, signal: giveUp.signal });
      const answer: unknown = await response.json();
      if (response.ok) return (await isSame(answer, bytes)) ? { kind: 'kept' } : { kind: 'unanswered' };
      // A server that broke may be well again; what it refuses by name it refuses again.
      return response.status >= 500 || response.status === 401 || response.status === 429
        ? { kind: 'unanswered' }
        : { kind: 'refused', problem: refusalOf(answer, response.status) };
    } catch {
      // No answer, or something between here and the server answered in its place: tried again later, for ever.
      return { kind: 'unanswered' };
    } finally {
      clearTimeout(limit);
    }
  },
});

/** The picture is forgotten here only when the server names the very bytes that were sent. */
async function isSame(answer: unknown, bytes: ArrayBuffer): Promise<boolean> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  const sha256 = [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return (answer as { sentSha256?: unknown } | null)?.sentSha256 === sha256;
}

function refusalOf(answer: unknown, status: number): { readonly code: string; readonly message: string } {
  const { code, message } = (answer ?? {}) as { code?: unknown; message?: unknown };
  return { code: typeof code === 'string' ? code : `HTTP_${status}`, message: typeof message === 'string' ? message : `HTTP ${status}` };
}
