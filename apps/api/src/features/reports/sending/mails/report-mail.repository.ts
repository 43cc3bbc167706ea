import { randomUUID } from 'node:crypto';
import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../../platform/records/uuid.js';
import { type MailState, ReportMailRow } from './report-mail.entity.js';

/** Codes that the pages say in the person's language. */
const NOT_KNOWN = 'no-answer';

export const WANTS_NO_MORE = 'wants-no-more';
/** The client has taken the address away since it was to be mailed. */
export const NO_ADDRESS_ANY_MORE = 'address-gone';

/** How the mails of a report stand. */
export interface MailCounts {
  readonly total: number;
  readonly sent: number;
  /** written into the outbox folder: no mail server is set */
  readonly written: number;
  readonly open: number;
  readonly nextTryAt: Date | null;
}

/** All SQL of mails. */
export const reportMails = {
  ofReports(tx: OrganizationTransaction, reportIds: readonly string[]): Promise<ReportMailRow[]> {
    return tx.of(ReportMailRow).find({
      where: { organizationId: tx.organizationId, reportId: In([...reportIds]) },
      order: { recipient: 'ASC' },
    });
  },

  async one(tx: OrganizationTransaction, id: string): Promise<ReportMailRow | null> {
    return isUuid(id) ? tx.of(ReportMailRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  /** One mail for each recipient, whatever the case of letters; one that waits or was refused is sent at the new instant, one that is out is not sent again. */
  async queue(tx: OrganizationTransaction, reportId: string, recipients: readonly string[], at: Date): Promise<void> {
    await tx.query(
      `update report_mail set next_try_at = $4, answer = case when state = 'refused' then null else answer end, attempts = case when state = 'refused' then 0 else attempts end, state = 'queued'
        where organization_id = $1 and report_id = $2 and state in ('queued', 'refused') and lower(recipient) = any($3::text[])`,
      [tx.organizationId, reportId, recipients.map((email) => email.toLowerCase()), at],
    );
    await tx.query(
      `insert into report_mail (organization_id, id, report_id, recipient, next_try_at)
        select $1, new.id, $2, new.recipient, $5 from unnest($3::uuid[], $4::text[]) as new (id, recipient)
        where not exists (select from report_mail there where there.organization_id = $1 and there.report_id = $2 and lower(there.recipient) = lower(new.recipient))
        on conflict on constraint report_mail_once do nothing`,
      [tx.organizationId, reportId, recipients.map(() => randomUUID()), recipients, at],
    );
  },

  /** A mail that is due becomes `sending`, for one worker alone; what it is sent with is kept before it is sent. */
  async claim(tx: OrganizationTransaction, reportId: string, mailId: string, stopHash: Buffer): Promise<ReportMailRow | null> {
    const { affected } = await tx
      .of(ReportMailRow)
      .createQueryBuilder()
      .update()
      .set({
        state: 'sending',
        attempts: () => 'attempts + 1',
        triedAt: () => 'now()',
        formerStopHashes: () => 'former_stop_hashes || array_remove(array[stop_hash], null)',
        stopHash,
        answer: null,
      })
      .where(`organization_id = :organization and report_id = :reportId and id = :mailId and state = 'queued'`, {
        organization: tx.organizationId,
        reportId,
        mailId,
      })
      .execute();
    return affected === 1 ? this.one(tx, mailId) : null;
  },

  /** The ids of those that are due. */
  async due(tx: OrganizationTransaction, reportId: string): Promise<string[]> {
    const rows = await tx.query<{ id: string }>(
      `select id from report_mail where organization_id = $1 and report_id = $2 and state = 'queued' and next_try_at <= now() order by recipient`,
      [tx.organizationId, reportId],
    );
    return rows.map(({ id }) => id);
  },

  /** What a worker began and never ended: nobody knows whether it arrived. It is not sent again by itself. Who wants no more, or is no address of the client any more, is not mailed. */
  async loseTouch(tx: OrganizationTransaction, reportId: string): Promise<void> {
    await tx
      .of(ReportMailRow)
      .update(
        { organizationId: tx.organizationId, reportId, state: 'sending' },
        { state: 'unknown', answer: NOT_KNOWN, mayHaveArrived: true },
      );
    await tx.query(
      `update report_mail set state = 'refused', answer = $3 where organization_id = $1 and report_id = $2 and state = 'queued'
        and exists (select from mail_stop where mail_stop.organization_id = $1 and mail_stop.email = lower(report_mail.recipient))`,
      [tx.organizationId, reportId, WANTS_NO_MORE],
    );
    await tx.query(
      `update report_mail set state = 'refused', answer = $3 where organization_id = $1 and report_id = $2 and state in ('queued', 'refused')
        and not exists (select from water_report report join client on client.organization_id = report.organization_id and client.id = report.client_id
          cross join unnest(client.emails) as own (email)
          where report.organization_id = $1 and report.id = $2 and client.retired_at is null and lower(btrim(own.email)) = lower(report_mail.recipient))`,
      [tx.organizationId, reportId, NO_ADDRESS_ANY_MORE],
    );
  },

  /** How a mail ended, or what a person found out: nothing where it is in none of the states from which that can be said. Gives whether it was. */
  async settle(tx: OrganizationTransaction, id: string, values: Partial<ReportMailRow>, from?: readonly MailState[]): Promise<boolean> {
    const where = { organizationId: tx.organizationId, id, ...(from && { state: In([...from]) }) };
    const mayHaveArrived = values.state === 'unknown' ? { mayHaveArrived: true } : {};
    const { affected } = await tx.of(ReportMailRow).update(where, { ...values, ...mayHaveArrived });
    return affected === 1;
  },

  async counts(tx: OrganizationTransaction, reportId: string): Promise<MailCounts> {
    const [row] = await tx.query<MailCounts>(
      `select count(*)::int as total, count(*) filter (where state = 'sent' and coalesce(answer, '') not like 'in-outbox:%')::int as sent,
        count(*) filter (where state = 'sent' and answer like 'in-outbox:%')::int as written, count(*) filter (where state in ('queued', 'sending'))::int as open,
        min(next_try_at) filter (where state = 'queued') as "nextTryAt" from report_mail where organization_id = $1 and report_id = $2`,
      [tx.organizationId, reportId],
    );
    return row!;
  },

  /** Takes the mails away that wait and cannot have reached anybody. */
  async dropQueued(tx: OrganizationTransaction, reportId: string): Promise<void> {
    await tx.of(ReportMailRow).delete({ organizationId: tx.organizationId, reportId, state: 'queued', mayHaveArrived: false });
  },
};
