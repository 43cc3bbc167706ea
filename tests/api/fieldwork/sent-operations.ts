import { randomUUID } from 'node:crypto';
import type { Somebody } from '../../support/test-app.js';

/** Something that was saved on a phone. */
export interface Operation {
  readonly key: string;
  readonly kind: string;
  readonly body: Record<string, unknown> | string;
  readonly payloadVersion?: number;
  readonly savedAt?: string;
  readonly seq?: number;
}

export interface Told {
  readonly key: string;
  readonly verdict: string;
  readonly problem: { readonly code: string; readonly message: string } | null;
  readonly other: Record<string, unknown> | null;
}

export const said = (kind: string, body: Operation['body'], more: Partial<Operation> = {}): Operation => ({
  key: randomUUID(),
  kind,
  body,
  ...more,
});

/** Sends what a phone saved, in its order. */
export async function sendFieldwork(who: Somebody, operations: readonly Operation[], device: object = {}): Promise<Told[]> {
  const { data, errors } = await who.send(
    'mutation($device: DeviceInput!, $operations: [OperationInput!]!) { sendFieldwork(device: $device, operations: $operations) { key verdict problem { code message } other } }',
    {
      device: { id: randomUUID(), name: 'A phone', appVersion: '1', waiting: 0, photosWaiting: 0, refused: 0, ...device },
      operations: operations.map(({ key, kind, body, payloadVersion = 1, savedAt = '2026-07-06T15:00:00Z', seq }, at) => ({
        ...{ key, kind, payloadVersion, savedAt, seq: seq ?? at },
        body: typeof body === 'string' ? body : JSON.stringify(body),
      })),
    },
  );
  if (errors.length > 0) throw new Error(JSON.stringify(errors));
  return data.sendFieldwork;
}
