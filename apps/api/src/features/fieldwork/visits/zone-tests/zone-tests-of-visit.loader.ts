import { defineLoader, grouped } from '../../../../platform/graphql/loader.js';
import type { ZoneTestRow } from './zone-test.entity.js';
import { zoneTests } from './zone-test.repository.js';

/** The tests of zones that were made at a visit. */
export const testsOfVisit = defineLoader<string, readonly ZoneTestRow[]>(
  async (tx, ids) => grouped(await zoneTests.ofVisits(tx, ids), (row) => row.visitId ?? ''),
  [],
);
