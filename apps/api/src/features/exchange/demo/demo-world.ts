import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Role } from '../../../platform/database/actor.js';

/** Where the demonstration's folders lie, beside the product's code. */
export const DEMO_FOLDER = path.resolve(import.meta.dirname, '../../../../demo');

/** Somebody who may sign in to the demonstration. */
export interface DemoMember {
  readonly name: string;
  readonly email: string;
  readonly role: Role;
  readonly language: 'en' | 'es';
  /** the client of a member of role client */
  readonly client?: string;
}

/** One company of the demonstration. */
export interface DemoCompany {
  readonly folder: string;
  readonly organization: string;
  readonly units: 'us' | 'metric';
  readonly members: readonly DemoMember[];
  readonly crews: readonly { readonly name: string; readonly members: readonly string[] }[];
}

type Crews = Pick<DemoCompany, 'folder' | 'crews'>;

const read = async (name: string): Promise<unknown> => JSON.parse(await readFile(path.join(DEMO_FOLDER, name), 'utf8'));

/** The companies of the demonstration, with their people and crews. */
export async function demoCompanies(): Promise<DemoCompany[]> {
  const companies = (await read('members.json')) as Omit<DemoCompany, 'crews'>[];
  const crews = (await read('crews.json')) as Crews[];
  return companies.map((company) => ({ ...company, crews: crews.find(({ folder }) => folder === company.folder)?.crews ?? [] }));
}
