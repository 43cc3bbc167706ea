const TIME_BYTES = 6;

/** A name for a record made on a device: 48 bits of time, then chance (RFC 9562, section 5.7). */
export function uuidV7(atMs: number, chance: Uint8Array = crypto.getRandomValues(new Uint8Array(10))): string {
  const time = Math.max(0, Math.floor(atMs))
    .toString(16)
    .padStart(TIME_BYTES * 2, '0')
    .slice(-TIME_BYTES * 2);
  const rest = [...chance];
  rest[0] = ((rest[0] ?? 0) & 0x0f) | 0x70;
  rest[2] = ((rest[2] ?? 0) & 0x3f) | 0x80;
  const text = time + rest.map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return [text.slice(0, 8), text.slice(8, 12), text.slice(12, 16), text.slice(16, 20), text.slice(20)].join('-');
}
