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
  readonly crews: readonly DemoCrew[];
  readonly visits: readonly DemoVisits[];
}

/** A crew of the demonstration, and what its days are like. */
export interface DemoCrew {
  readonly name: string;
  readonly members: readonly string[];
  readonly skills: string[];
  readonly startLatitude: number;
  readonly startLongitude: number;
  readonly dayStartsMinute: number;
  readonly dayEndsMinute: number;
}

/** How some properties of the demonstration are visited. */
export interface DemoVisits {
  readonly properties: readonly string[];
  readonly terms: {
    readonly everyDays: number;
    readonly visitMinutes: number;
    readonly skills?: string[];
    readonly hours?: { kind: string; weekdays: number[]; fromMinute: number; untilMinute: number }[];
  };
}

type Crews = Pick<DemoCompany, 'folder' | 'crews' | 'visits'>;

const read = async (name: string): Promise<unknown> => JSON.parse(await readFile(path.join(DEMO_FOLDER, name), 'utf8'));

/** The companies of the demonstration, with their people and crews. */
export async function demoCompanies(): Promise<DemoCompany[]> {
  const companies = (await read('members.json')) as Omit<DemoCompany, 'crews' | 'visits'>[];
  const crews = (await read('crews.json')) as Crews[];
  return companies.map((company) => ({ crews: [], visits: [], ...crews.find(({ folder }) => folder === company.folder), ...company }));
}
