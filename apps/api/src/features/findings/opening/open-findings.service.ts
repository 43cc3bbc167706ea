import { randomUUID } from 'node:crypto';
import { Injectable, type OnModuleInit } from '@nestjs/common';
import { followFindings, type FindingStep } from '@rillbook/metering/detection/life/follow-findings.js';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { Events } from '../../../platform/records/events.js';
import { type AccountsComputed, PropertiesComputed } from '../../accounts/accounts-computed.event.js';
import type { FindingRow } from '../finding.entity.js';
import { type FindingChange, findings, type NewFinding } from '../finding.repository.js';
import { asKeptFinding, said, saysTheSame } from './finding-values.js';
import { SEEN_ON_SITE } from './see-on-site.service.js';
import { type EpisodeInTime, episodesInTime } from './timed-episodes.js';

/** How a finding ended that nobody worked on. */
export const CLEARED = 'no longer seen';

/** What is to be written for some properties, gathered so that it takes few statements. */
interface ToWrite {
  readonly opened: NewFinding[];
  readonly changed: FindingChange[];
  readonly gone: string[];
}

/** Opens, follows and closes findings when accounts are computed: one for each cause, dated by the records that were enough to tell it. */
@Injectable()
export class OpenFindings implements OnModuleInit {
  constructor(private readonly events: Events) {}

  onModuleInit(): void {
    this.events.on(PropertiesComputed, (tx, event) => this.run(tx, event.properties));
  }

  async run(tx: OrganizationTransaction, computed: readonly AccountsComputed[]): Promise<void> {
    const kept = await findings.ofProperties(
      tx,
      computed.map(({ propertyId }) => propertyId),
    );
    const write: ToWrite = { opened: [], changed: [], gone: [] };
    for (const event of computed) stepsOf(event, (kept.get(event.propertyId) ?? []).filter(isOfRecords), write);
    await findings.remove(tx, write.gone);
    await findings.update(tx, write.changed);
    await findings.insert(tx, write.opened);
  }
}

/** What a person saw with their own eyes no record takes back. */
const isOfRecords = ({ kind }: FindingRow): boolean => kind !== SEEN_ON_SITE;

function stepsOf({ propertyId, timeZone, episodes, newest }: AccountsComputed, kept: readonly FindingRow[], write: ToWrite): void {
  const rows = new Map(kept.map((row) => [row.id, row]));
  const timed = episodesInTime(episodes, timeZone);
  for (const step of followFindings(kept.map(asKeptFinding), timed)) {
    if (step.deed === 'open') write.opened.push(opened(propertyId, step));
    else if (step.deed === 'let go') write.gone.push(step.finding.id);
    else {
      const row = rows.get(step.finding.id)!;
      const values = changeOf(step, row, newest.at);
      if (!saysTheSame(row, values)) write.changed.push({ id: row.id, values });
    }
  }
}

type Opening = Extract<FindingStep, { deed: 'open' }>;
type Change = Exclude<FindingStep, { deed: 'open' | 'let go' }>;

/** A new finding. What had ended before anybody was told of it is past; what a dismissal covers is dismissed with the same reason. */
function opened(propertyId: string, { episode, cameBack, silencedBy }: Opening): NewFinding {
  const isOver = episode.clearedAt !== null;
  return {
    id: randomUUID(),
    propertyId,
    causeKey: episode.causeKey,
    openedAt: new Date(episode.openedAt),
    cameBack,
    version: 1,
    state: 'open',
    ...said(episode as EpisodeInTime),
    ...(isOver && { state: 'resolved' as const, resolvedWith: CLEARED, decidedAt: new Date(episode.clearedAt!) }),
    ...(!isOver &&
      silencedBy && {
        state: 'dismissed' as const,
        dismissedWhy: `as before: ${silencedBy.dismissedReason}`,
        dismissedReason: silencedBy.dismissedReason,
      }),
  };
}

function changeOf(step: Change, row: FindingRow, now: Date): Partial<FindingRow> {
  const numbers = step.episode ? said(step.episode as EpisodeInTime) : {};
  switch (step.deed) {
    case 'follow':
      return numbers;
    case 'come back':
      return { ...numbers, ...REARMED, state: 'open', openedAt: backAt(step, now), cameBack: row.cameBack + 1, version: row.version + 1 };
    case 'clear':
      return { ...(row.state === 'dismissed' || row.state === 'resolved' ? {} : numbers), ...cleared(step, row, now) };
  }
}

/** Told anew, and to everybody: whatever was decided or silenced was said of the time before. */
const REARMED = {
  dismissedWhy: null,
  dismissedReason: null,
  resolvedWith: null,
  decidedBy: null,
  decidedAt: null,
  acknowledgedAt: null,
  acknowledgedBy: null,
  acknowledgedNote: null,
  acknowledgedUntil: null,
} as const;

// What was never told begins when it was first seen; what was decided comes back with the newest record.
function backAt({ finding, episode }: Change, now: Date): Date {
  return finding.decidedAt === null && episode ? new Date(episode.openedAt) : now;
}

function cleared({ episode }: Change, row: FindingRow, now: Date): Partial<FindingRow> {
  const clearedAt = episode?.clearedAt ? new Date(episode.clearedAt) : now;
  if (row.state !== 'open') return { clearedAt };
  return { clearedAt, state: 'resolved', resolvedWith: CLEARED, decidedBy: null, decidedAt: clearedAt, version: row.version + 1 };
}
