/** One column of a change: what it was and what it is. */
export interface ChangedField {
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

const HIDDEN = new Set(['id', 'version', 'organizationId', 'propertyId']);

/** The columns that differ, as short text. What a made thing began with is not listed: it stands on the page. */
export function changedFields(before: unknown, after: unknown): readonly ChangedField[] {
  const [was, is] = [recordOf(before), recordOf(after)];
  if (!was || !is) return [];
  return Object.keys({ ...was, ...is })
    .filter((name) => !HIDDEN.has(name) && JSON.stringify(was[name]) !== JSON.stringify(is[name]))
    .map((name) => ({ name, before: textOf(was[name]), after: textOf(is[name]) }));
}

const recordOf = (value: unknown): Readonly<Record<string, unknown>> | null =>
  value && typeof value === 'object' && !Array.isArray(value) ? (value as Record<string, unknown>) : null;

const textOf = (value: unknown): string =>
  value === null || value === undefined ? '–' : typeof value === 'object' ? JSON.stringify(value) : String(value);
