import type { Viewer } from './viewer.js';

const NAME = 'rillbook.viewer';
const FORM = 1;

interface Remembered {
  readonly form: number;
  readonly viewer: Viewer;
  /** ISO 8601, on this phone's clock */
  readonly at: string;
}

/** Remembers who is signed in, so that the field can be worked without signal. Name, role and crews; no work. */
export function rememberViewer(viewer: Viewer): void {
  const row: Remembered = { form: FORM, viewer, at: new Date().toISOString() };
  localStorage.setItem(NAME, JSON.stringify(row));
}

export const forgetViewer = (): void => localStorage.removeItem(NAME);

const dayOn = (at: Date, timeZone: string): number =>
  Date.parse(new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(at));

/** Who was signed in here last; the organization's day has gone on with this phone's days since. Null where nobody is known. */
export function rememberedViewer(now: Date): Viewer | null {
  const row = readRow();
  if (row?.form !== FORM) return null;
  const { organization } = row.viewer;
  const passed = dayOn(now, organization.timeZone) - dayOn(new Date(row.at), organization.timeZone);
  const today = new Date(Date.parse(organization.today) + passed).toISOString().slice(0, 10);
  return { ...row.viewer, organization: { ...organization, today } };
}

function readRow(): Remembered | null {
  try {
    return JSON.parse(localStorage.getItem(NAME) ?? 'null') as Remembered | null;
  } catch (problem) {
    if (problem instanceof SyntaxError) return null;
    throw problem;
  }
}
