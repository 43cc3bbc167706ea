import { In } from 'typeorm';
import { defineLoader } from '../../platform/graphql/loader.js';
import { FindingRow } from './finding.entity.js';

/** The finding of an id. */
export const findingOfId = defineLoader<string, FindingRow | null>(async (tx, ids) => new Map((await tx.of(FindingRow).findBy({ organizationId: tx.organizationId, id: In([...ids]) })).map((row) => [row.id, row])), null);
