import { uuidV7 } from './uuid-v7.js';

/** What a record is called and when it was made: the same for every attempt to send it. */
export interface RecordName {
  readonly deviceRecordId: string;
  readonly at: string;
}

interface Kept extends RecordName {
  readonly content: string;
}

const keyOf = (key: string): string => `rillbook.record.${key}`;

function keptUnder(key: string): Kept | null {
  try {
    const found = JSON.parse(sessionStorage.getItem(keyOf(key)) ?? 'null') as Partial<Kept> | null;
    return found && typeof found.deviceRecordId === 'string' && typeof found.at === 'string' ? ({ content: '', ...found } as Kept) : null;
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}

/**
 * The name and time of a record, made once for each content and kept on the device until the server has it: an answer that was lost on the
 * way makes no second record.
 */
export function recordName(key: string, content: unknown, now: Date): RecordName {
  const wanted = JSON.stringify(content);
  const kept = keptUnder(key);
  if (kept && kept.content === wanted) return { deviceRecordId: kept.deviceRecordId, at: kept.at };
  const made = { deviceRecordId: uuidV7(now.getTime()), at: now.toISOString() };
  sessionStorage.setItem(keyOf(key), JSON.stringify({ ...made, content: wanted }));
  return made;
}

/** The server has it: what is recorded next under this key is another record. */
export const forgetRecord = (key: string): void => sessionStorage.removeItem(keyOf(key));
