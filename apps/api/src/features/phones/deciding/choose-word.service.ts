import { randomUUID } from 'node:crypto';
import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { EndVisit } from '../../fieldwork/visits/deeds/end-visit.service.js';
import { NoteZone } from '../../fieldwork/visits/deeds/note-zone.service.js';
import { RecordReading } from '../../metering/readings/record-reading.service.js';
import { RecordSettings } from '../../settings/facts/record-settings.service.js';
import { Body } from '../deeds/body.js';
import { closingOf, readingOf, settingsOf, zoneNoteOf } from '../deeds/records-of-body.js';
import type { OperationRow } from '../operations/operation.entity.js';
import { operations } from '../operations/operation.repository.js';
import { phonesProblems } from '../phones.problems.js';
import { wordThatStands } from '../operations/word-that-stands.js';

/** Settings are never edited: what is chosen after all stands from a second later on. */
const LATER_MS = 1000;

type PutInPlace = (tx: OrganizationTransaction, row: OperationRow) => Promise<void>;

/** Somebody in the office chooses between what two people said; the other stays in the journal. */
@Injectable()
export class ChooseWord {
  private readonly putInPlace: Readonly<Record<string, PutInPlace>>;

  constructor(noting: NoteZone, ending: EndVisit, readings: RecordReading, facts: RecordSettings) {
    this.putInPlace = {
      async 'note-zone'(tx, { body, answer }) {
        await noting.run(tx, zoneNoteOf(merged(body, answer.other)));
      },
      async 'close-visit'(tx, { body, answer }) {
        await ending.run(tx, Body.of(body).text('visitId'), closingOf(merged(body, answer.other)));
      },
      async reading(tx, { body }) {
        const sent = readingOf(randomUUID(), Body.of(body));
        const first = await readings.run(tx, sent);
        if (first.outcome === 'conflict') await readings.run(tx, { ...sent, replacesId: first.kept.id });
      },
      async settings(tx, { body }) {
        const sent = settingsOf(randomUUID(), Body.of(body));
        await facts.run(tx, { ...sent, effectiveAt: new Date(sent.effectiveAt.getTime() + LATER_MS) });
      },
    };
  }

  /** @param word - 'sent' for what the phone said, 'other' for what stood or stands beside it */
  async run(tx: OrganizationTransaction, key: string, word: string): Promise<OperationRow> {
    if (word !== 'sent' && word !== 'other') throw platformProblems.valueRefused({ field: 'word', found: word, expected: 'sent or other' });
    await operations.hold(tx, [key]);
    const row = await operations.ofKey(tx, key);
    if (!row) throw platformProblems.notFound({ thing: 'operation', id: key });
    if (row.settledAt) return row;
    const stands = wordThatStands(row);
    if (stands === null) throw phonesProblems.nothingToChoose({ kind: row.kind });
    if (word !== stands) await this.putInPlace[row.kind]!(tx, row);
    await operations.settle(tx, row.id);
    return row;
  }
}

/** What was said before, with what it does not name from what was sent. */
const merged = (body: string, other: Readonly<Record<string, unknown>> | undefined): Body => {
  const { by: _, ...said } = other ?? {};
  return Body.of(JSON.stringify({ ...(JSON.parse(body) as object), ...said }));
};
