import type { Phone } from './phone.js';

const base64 = (bytes: ArrayBuffer): string => {
  let text = '';
  for (const byte of new Uint8Array(bytes)) text += String.fromCharCode(byte);
  return btoa(text);
};

/** Everything that the server does not have, with its pictures, as a file that a person can hand over. */
export async function unsentFile(phone: Phone): Promise<Blob> {
  const unsent = phone.outbox.operations.filter(({ state, picture }) => state !== 'sent' || picture === 'here' || picture === 'refused');
  const operations = await Promise.all(
    unsent.map(async (one) => {
      const picture = one.picture === 'none' ? null : await phone.picture(one.key);
      return { ...one, pictureBase64: picture && base64(picture) };
    }),
  );
  const file = { product: 'Rillbook', deviceId: phone.deviceId, operations, drafts: phone.outbox.drafts };
  return new Blob([JSON.stringify(file, null, 1)], { type: 'application/json' });
}
