/** So much of a phone's id tells it from a person's other phones. */
const TAG_LENGTH = 4;

/** What every browser says, and so tells nothing of the phone. */
const SAYS_NOTHING = /^(Linux|X11|U|K|wv|compatible|Mobile|Tablet|Windows NT .*|rv:.*|)$/;

/** What a phone is called at the office and on its own page: what the browser says it runs on, and the end of the phone's own id. */
export function phoneNameOf(userAgent: string, deviceId: string): string {
  // The first comment of a User-Agent tells of the system by custom (RFC 9110, section 10.1.5, leaves its words free).
  const system = /\(([^)]*)\)/
    .exec(userAgent)?.[1]
    ?.split(';')
    .map((part) => part.trim())
    .find((part) => !SAYS_NOTHING.test(part));
  return [system, deviceId.slice(-TAG_LENGTH).toUpperCase()].filter(Boolean).join(' · ');
}
