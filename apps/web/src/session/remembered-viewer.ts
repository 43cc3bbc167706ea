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

/** The organization and membership of whoever was signed in here last; null where nobody is known. */
export function rememberedMember(): (Pick<Viewer, 'memberId'> & { readonly organizationId: string }) | null {
  const row = readRow();
  return row?.form === FORM ? { organizationId: row.viewer.organization.id, memberId: row.viewer.memberId } : null;
}

/** In what language whoever was signed in here last reads; null where nobody is known. */
export function rememberedLanguage(): Viewer['person']['language'] | null {
  const row = readRow();
  return row?.form === FORM ? row.viewer.person.language : null;
}

/** Who was signed in here last; the organization's day has gone on with this phone's days since. Null where nobody is known. */
export function rememberedViewer(now: Date): Viewer | null {
  const row = readRow();
  if (row?.form !== FORM) return null;
  const { organization } = row.viewer;
  const calendar = new Intl.DateTimeFormat('en-CA', { timeZone: organization.timeZone, year: 'numeric', month: '2-digit', day: '2-digit' });
  const passed = Date.parse(calendar.format(now)) - Date.parse(calendar.format(new Date(row.at)));
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
