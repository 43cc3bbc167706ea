import { parseArgs } from 'node:util';
import { UsageProblem } from './command.js';
import { type NamedOrganization, organizationNamed } from './organization-named.js';
import { organizationNames } from './organization-names.js';

/** A command's one folder and its organization, as they were typed. */
export interface FolderWords<Flag extends string> {
  readonly folder: string;
  readonly organization: string | null;
  readonly flags: Readonly<Record<Flag, boolean>>;
}

/** Reads `FOLDER [--organization NAME]` and flags. */
export function folderWords<Flag extends string>(words: readonly string[], flags: readonly Flag[]): FolderWords<Flag> {
  const options = Object.fromEntries(flags.map((flag) => [flag, { type: 'boolean' }]));
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: { organization: { type: 'string' }, ...(options as Record<string, { type: 'boolean' }>) },
  });
  const [folder, ...others] = positionals;
  if (!folder) throw new UsageProblem('FOLDER is missing.');
  if (others.length)
    throw new UsageProblem(`One folder is expected; "${others[0]}" is too much. Put a name with spaces into quotation marks.`);
  const given = values as Record<string, string | boolean | undefined>;
  const organization = typeof given['organization'] === 'string' ? given['organization'].trim() : null;
  if (organization === '') throw new UsageProblem('--organization is empty.');
  return { folder, organization, flags: Object.fromEntries(flags.map((flag) => [flag, given[flag] === true])) as Record<Flag, boolean> };
}

/** The organization that was named, or null where there is none of that name; the server's only one where none was named. */
export async function organizationMeant(
  adminUrl: string,
  named: string | null,
): Promise<(NamedOrganization & { readonly name: string }) | null> {
  const name = named ?? (await onlyOne(adminUrl));
  const found = await organizationNamed(adminUrl, name, { make: false });
  return found && { ...found, name };
}

async function onlyOne(adminUrl: string): Promise<string> {
  const names = await organizationNames(adminUrl);
  const [only] = names;
  if (only === undefined) throw new UsageProblem('--organization is missing.');
  if (names.length > 1) throw new UsageProblem(`--organization is missing. There are: ${names.join(', ')}.`);
  return only;
}
