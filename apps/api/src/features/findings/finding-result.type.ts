import { createUnionType } from '@nestjs/graphql';
import { ChangedMeanwhile, changedMeanwhile } from '../../platform/graphql/outcomes.type.js';
import { VersionConflict } from '../../platform/records/kept-records.js';
import type { FindingRow } from './finding.entity.js';
import { Finding, showFinding } from './finding.type.js';

/** The finding as it was decided, or who was quicker. */
export const FindingResult = createUnionType({
  name: 'FindingResult',
  types: () => [Finding, ChangedMeanwhile] as const,
  resolveType: (value: object) => value.constructor as typeof Finding,
});

/** What became of a decision, as it is answered. */
export const outcome = (result: FindingRow | VersionConflict): Finding | ChangedMeanwhile =>
  result instanceof VersionConflict ? changedMeanwhile(result) : showFinding(result);
