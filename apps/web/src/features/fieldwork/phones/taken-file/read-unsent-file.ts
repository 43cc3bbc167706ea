import type { Operation } from '../../../../offline/operation.js';

/** A record of a phone's file, with its picture where the file has one. */
export interface FiledOperation {
  readonly operation: Operation;
  readonly picture: ArrayBuffer | null;
}

/** What a phone's file holds. */
export interface UnsentFile {
  readonly deviceId: string;
  readonly operations: readonly FiledOperation[];
  /** forms that were half written: nobody saved them, and they are not sent */
  readonly drafts: number;
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);

const TEXTS = ['key', 'kind', 'savedAt', 'body', 'picture'] as const;
const isOperation = (value: unknown): value is Fields & Operation =>
  isFields(value) &&
  TEXTS.every((name) => typeof value[name] === 'string') &&
  Number.isInteger(value['seq']) &&
  Number.isInteger(value['payloadVersion']);

/**
 * Reads what a phone saved as a file.
 *
 * @returns null where it is no such file, or not whole: then nothing of it is taken
 */
export function readUnsentFile(text: string): UnsentFile | null {
  const file = parsed(text);
  if (!isFields(file) || file['product'] !== 'Rillbook' || typeof file['deviceId'] !== 'string') return null;
  const { deviceId, operations: said, drafts } = file;
  if (!Array.isArray(said) || !said.every(isOperation)) return null;
  const operations = said.map((one) => ({ operation: one, picture: bytesOf(one['pictureBase64']) }));
  return { deviceId, operations, drafts: isFields(drafts) ? Object.keys(drafts).length : 0 };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    // Any file can be chosen; what is no JSON is told apart by the caller.
    return null;
  }
}

function bytesOf(base64: unknown): ArrayBuffer | null {
  if (typeof base64 !== 'string') return null;
  try {
    return Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0)).buffer;
  } catch {
    // The record still counts without its picture; it is told as a picture that could not be taken in.
    return null;
  }
}
