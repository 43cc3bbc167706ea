import { HttpRefusal } from '../../../../graphql/problem.js';

/** One thing that is wrong or to be noted in a file, with its sentence in the reader's language. */
export interface FileProblem {
  readonly file: string;
  readonly line: number | null;
  readonly column: string | null;
  readonly code: string;
  readonly found: string;
  readonly expected: string;
  readonly says: string;
}

/** The name under which the server tells what is wrong with all files together. */
export const ALL_TOGETHER = '*';

/** How a file of a layout of its own is understood: whose it is, as far as that is known. */
export interface RecognizedFile {
  readonly layout: string;
  readonly belongsTo: 'station' | 'meter';
  readonly station: string | null;
  readonly asksWindHeight: boolean;
  readonly windHeightM: number | null;
  readonly property: string | null;
  readonly meter: string | null;
}

/** What a person says of a file that does not say it itself. */
export interface FileMeaning {
  readonly station?: string;
  readonly windHeightM?: number;
  readonly property?: string;
  readonly meter?: string;
}

/** What a check found in one file. */
export interface CheckedFile {
  readonly name: string;
  /** What kind of file it is, such as 'zones'; null where it is none that is known. */
  readonly file: string | null;
  readonly recognized: RecognizedFile | null;
  /** The name by which its refused rows are asked for; null where it gives none. */
  readonly rejectedAs: string | null;
  readonly status: string;
  readonly new: number;
  readonly changed: number;
  readonly same: number;
  readonly wrong: number;
  readonly notices: readonly FileProblem[];
  readonly problems: readonly FileProblem[];
  readonly problemsTotal: number;
  readonly noticesTotal: number;
}

/** An upload that was checked; nothing of it is kept yet. */
export interface CheckedUpload {
  readonly id: string;
  readonly files: readonly CheckedFile[];
  readonly ignored: readonly { readonly name: string; readonly says: string }[];
  readonly problemsTotal: number;
}

/** A header that no form of another site can set, so that a cookie alone does no deed. */
const OWN_REQUEST = { 'x-rillbook-request': '1' };

/** What a body of an answer says that refuses; null where it is none of ours. */
function refusalIn(body: unknown): HttpRefusal | null {
  const { code, message, details } = (body ?? {}) as { code?: unknown; message?: unknown; details?: unknown };
  return typeof message === 'string' && message !== ''
    ? new HttpRefusal(typeof code === 'string' ? code : 'UNKNOWN', message, details)
    : null;
}

/** What JSON says; null where something between here and the server answered in other words. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}

/** The answer's content; what the server refuses comes as an error that says why. */
function contentOf<Content>(status: number, text: string): Content {
  const body = text === '' ? null : parsed(text);
  if (status < 200 || status >= 300) throw refusalIn(body) ?? new HttpRefusal(`HTTP_${status}`, `HTTP ${status}`, null);
  return body as Content;
}

async function answer<Content>(request: Promise<Response>): Promise<Content> {
  const response = await request;
  return contentOf(response.status, await response.text());
}

/** How much of the files was sent. */
export interface Sent {
  readonly done: number;
  readonly total: number;
}

/** Sends a form and tells how far it is, which fetch cannot. */
function send<Content>(address: string, form: FormData, onSent: (sent: Sent) => void): Promise<Content> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', address);
    for (const [name, value] of Object.entries(OWN_REQUEST)) request.setRequestHeader(name, value);
    request.upload.onprogress = ({ loaded, total }) => onSent({ done: loaded, total });
    request.onerror = () => reject(new TypeError('no answer'));
    request.onload = () => {
      try {
        resolve(contentOf<Content>(request.status, request.responseText));
      } catch (problem) {
        reject(problem);
      }
    };
    request.send(form);
  });
}

/** The addresses of import and export. */
export const imports = {
  /** Sends files to be checked. */
  check(files: readonly File[], onSent: (sent: Sent) => void): Promise<CheckedUpload> {
    const form = new FormData();
    for (const file of files) form.append('files', file, file.name);
    return send('/api/imports', form, onSent);
  },

  /** What the check of an upload found. */
  read: (id: string): Promise<CheckedUpload> => answer(fetch(`/api/imports/${encodeURIComponent(id)}`, { credentials: 'same-origin' })),

  /** Says whose files they are, and has them checked again. */
  mean: (id: string, files: Readonly<Record<string, FileMeaning>>): Promise<CheckedUpload> =>
    answer(
      fetch(`/api/imports/${encodeURIComponent(id)}/meanings`, {
        method: 'POST',
        headers: { ...OWN_REQUEST, 'content-type': 'application/json' },
        body: JSON.stringify({ files }),
        credentials: 'same-origin',
      }),
    ),

  /** Keeps the good rows, or all of them. */
  accept: (id: string, rows: 'good' | 'all'): Promise<{ readonly jobId: string }> =>
    answer(
      fetch(`/api/imports/${encodeURIComponent(id)}/accept`, {
        method: 'POST',
        headers: { ...OWN_REQUEST, 'content-type': 'application/json' },
        body: JSON.stringify({ rows }),
        credentials: 'same-origin',
      }),
    ),

  /** Forgets an upload. */
  drop: (id: string): Promise<null> =>
    answer(fetch(`/api/imports/${encodeURIComponent(id)}`, { method: 'DELETE', headers: OWN_REQUEST, credentials: 'same-origin' })),

  rejectedPath: (id: string, file: string): string => `/api/imports/${encodeURIComponent(id)}/rejected/${encodeURIComponent(file)}`,
  exportPath: '/api/export',
} as const;
