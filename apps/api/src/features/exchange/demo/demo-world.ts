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
  readonly finished: readonly DemoFinished[];
}

/** A piece of work that a crew had finished before the demonstration's day; its local times are the company's. */
export interface DemoFinished {
  readonly property: string;
  /** of which one ended with it, the likeliest first; none where it answered no finding */
  readonly findingKinds: readonly string[];
  readonly kind: string;
  readonly what: string;
  readonly note: string;
  readonly labourHours?: number;
  readonly labourRate?: number;
  readonly parts?: readonly { readonly name: string; readonly count: number; readonly price: number }[];
  readonly doneAt: string;
  readonly by: string;
  readonly photos: readonly DemoPhoto[];
}

/** A picture of finished work: a drawing in the folder of pictures. */
export interface DemoPhoto {
  readonly kind: 'before' | 'after';
  readonly picture: string;
  readonly at: string;
  readonly word: string;
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
type Finished = Pick<DemoCompany, 'folder' | 'finished'>;

const read = async (name: string): Promise<unknown> => JSON.parse(await readFile(path.join(DEMO_FOLDER, name), 'utf8'));

/** The companies of the demonstration, with their people, crews and finished work. */
export async function demoCompanies(): Promise<DemoCompany[]> {
  const companies = (await read('members.json')) as Omit<DemoCompany, 'crews' | 'visits' | 'finished'>[];
  const crews = (await read('crews.json')) as Crews[];
  const finished = (await read('finished-work.json')) as Finished[];
  return companies.map((company) => {
    const isIts = ({ folder }: { folder: string }): boolean => folder === company.folder;
    return { crews: [], visits: [], finished: [], ...crews.find(isIts), ...finished.find(isIts), ...company };
  });
}
