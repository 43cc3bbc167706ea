import { parseArgs } from 'node:util';
import { UsageProblem } from './command.js';
import { type NamedOrganization, organizationNamed } from './organization-named.js';
import { organizationNames } from './organization-names.js';

/** A command's one folder and its organization, as they were typed. */
export interface FolderWords<Flag extends string, Text extends string = never> {
  readonly folder: string;
  readonly organization: string | null;
  readonly flags: Readonly<Record<Flag, boolean>>;
  /** Further options with a text; null where one was not typed. */
  readonly texts: Readonly<Record<Text, string | null>>;
}

/** Reads `FOLDER [--organization NAME]`, flags, and further options with a text. */
export function folderWords<Flag extends string, Text extends string = never>(
  words: readonly string[],
  flags: readonly Flag[],
  texts: readonly Text[] = [],
): FolderWords<Flag, Text> {
  const options = Object.fromEntries(flags.map((flag) => [flag, { type: 'boolean' }]));
  const further = Object.fromEntries(texts.map((text) => [text, { type: 'string' }]));
  const { values, positionals } = parseArgs({
    args: [...words],
    allowPositionals: true,
    options: {
      organization: { type: 'string' },
      ...(options as Record<string, { type: 'boolean' }>),
      ...(further as Record<string, { type: 'string' }>),
    },
  });
  const [folder, ...others] = positionals;
  if (!folder) throw new UsageProblem('FOLDER is missing.');
  if (others.length)
    throw new UsageProblem(`One folder is expected; "${others[0]}" is too much. Put a name with spaces into quotation marks.`);
  const given = values as Record<string, string | boolean | undefined>;
  return {
    folder,
    organization: textOf(given, 'organization'),
    flags: Object.fromEntries(flags.map((flag) => [flag, given[flag] === true])) as Record<Flag, boolean>,
    texts: Object.fromEntries(texts.map((text) => [text, textOf(given, text)])) as Record<Text, string | null>,
  };
}

function textOf(given: Readonly<Record<string, string | boolean | undefined>>, name: string): string | null {
  const typed = given[name];
  const text = typeof typed === 'string' ? typed.trim() : null;
  if (text === '') throw new UsageProblem(`--${name} is empty.`);
  return text;
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
