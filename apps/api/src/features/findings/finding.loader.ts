import { defineLoader } from '../../platform/graphql/loader.js';
import type { FindingRow } from './finding.entity.js';
import { findings } from './finding.repository.js';

/** The finding of an id. */
export const findingOfId = defineLoader<string, FindingRow | null>(
  async (tx, ids) => new Map((await findings.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);

/** A property's findings, the costliest first. */
export const findingsOfProperty = defineLoader<string, FindingRow[]>((tx, ids) => findings.ofProperties(tx, ids), []);

/** What is found of a reading. */
export const findingsOfReading = defineLoader<string, FindingRow[]>((tx, ids) => findings.ofReadings(tx, ids), []);
