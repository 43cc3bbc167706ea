import type { FindingKind } from '@rillbook/metering/detection/finding-candidate.js';
import type { KeptFinding } from '@rillbook/metering/detection/life/kept-finding.js';
import { isDeepStrictEqual } from 'node:util';
import type { FindingRow } from '../finding.entity.js';
import type { EpisodeInTime } from './timed-episodes.js';

/** What an episode says, as columns. Evidence that is not there stands in the account; what the row has is kept. */
export function said(episode: EpisodeInTime): Partial<FindingRow> {
  const { kind, causeFamily, meterId, controllerId, zoneIds, litres, money, confidence, says, evidence, sdLitres, history } = episode;
  const hasEvidence = Object.keys(evidence).length > 0;
  return {
    ...{ kind, causeFamily, meterId, controllerId, litres, money, confidence, says },
    zoneId: zoneIds.length === 1 ? zoneIds[0]! : null,
    fromOn: episode.fromDate,
    untilOn: episode.untilDate,
    clearedAt: episode.clearedAt === null ? null : new Date(episode.clearedAt),
    ...(history.length > 0 && { history: [...history] }),
    ...(hasEvidence && { evidence: { ...evidence, zoneIds, sdLitres } }),
  };
}

/** Whether a finding's row already says it; as the database keeps it, which knows no undefined. */
export function saysTheSame(row: FindingRow, now: Partial<FindingRow>): boolean {
  return Object.entries(now).every(([key, value]) => isDeepStrictEqual(row[key as keyof FindingRow], asKept(value)));
}

const asKept = (value: unknown): unknown =>
  typeof value === 'object' && value !== null && !(value instanceof Date) ? JSON.parse(JSON.stringify(value)) : (value ?? null);

/** A row as its life asks. One that was resolved by itself when it was made was never told to anybody. */
export function asKeptFinding(row: FindingRow): KeptFinding {
  const { id, causeKey, causeFamily, meterId, controllerId, zoneId, state, litres, cameBack, dismissedReason } = row;
  return {
    ...{ id, causeKey, causeFamily, meterId, controllerId, zoneId, state, litres, cameBack, dismissedReason },
    kind: row.kind as FindingKind,
    openedAt: row.openedAt.getTime(),
    clearedAt: row.clearedAt?.getTime() ?? null,
    decidedAt: row.decidedBy === null ? null : (row.decidedAt?.getTime() ?? null),
    isPast: row.state === 'resolved' && row.decidedBy === null && row.version === 1,
  };
}
