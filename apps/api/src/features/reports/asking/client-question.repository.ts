import { randomUUID } from 'node:crypto';
import { IsNull } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { ClientQuestionRow } from './client-question.entity.js';

const MOST = 200;

type Asked = Pick<ClientQuestionRow, 'clientId' | 'propertyId' | 'reportId' | 'question' | 'shareLinkId' | 'email' | 'language'>;

/** All SQL of clients' questions. */
export const clientQuestions = {
  /** Those that the actor may see, the newest first: a client's own, or all. */
  all(tx: OrganizationTransaction): Promise<ClientQuestionRow[]> {
    const own = tx.actor.role === 'client' ? { clientId: tx.actor.clientId! } : {};
    return tx
      .of(ClientQuestionRow)
      .find({ where: { organizationId: tx.organizationId, ...own }, order: { askedAt: 'DESC', id: 'ASC' }, take: MOST });
  },

  async one(tx: OrganizationTransaction, id: string): Promise<ClientQuestionRow | null> {
    return isUuid(id) ? tx.of(ClientQuestionRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  /** Keeps a question. What the same person still waits to have answered in the same words is that question: its answer was lost, and it was sent again. */
  async add(tx: OrganizationTransaction, asked: Asked): Promise<ClientQuestionRow> {
    await tx.query('select pg_advisory_xact_lock(hashtextextended($1, 43))', [`${tx.organizationId} ${asked.clientId}`]);
    const before = await this.waiting(tx, asked);
    if (before) return before;
    const id = randomUUID();
    await tx.of(ClientQuestionRow).insert({ ...asked, organizationId: tx.organizationId, id, askedBy: tx.actor.personId });
    return (await this.one(tx, id))!;
  },

  waiting(tx: OrganizationTransaction, { language: _, ...asked }: Asked): Promise<ClientQuestionRow | null> {
    const same = Object.fromEntries(
      Object.entries({ ...asked, askedBy: tx.actor.personId }).map(([name, value]) => [name, value ?? IsNull()]),
    );
    return tx.of(ClientQuestionRow).findOneBy({ ...same, organizationId: tx.organizationId, answeredAt: IsNull(), dismissedAt: IsNull() });
  },

  /** How many were asked about a report since yesterday. */
  async ofReportToday(tx: OrganizationTransaction, reportId: string): Promise<number> {
    const [row] = await tx.query<{ count: number }>(
      `select count(*)::int as count from client_question where organization_id = $1 and report_id = $2 and asked_at > now() - interval '1 day'`,
      [tx.organizationId, reportId],
    );
    return row!.count;
  },

  /** What was asked by a link, the oldest first, as it is shown on that link. */
  ofLink(tx: OrganizationTransaction, shareLinkId: string): Promise<ClientQuestionRow[]> {
    return tx
      .of(ClientQuestionRow)
      .find({ where: { organizationId: tx.organizationId, shareLinkId, dismissedAt: IsNull() }, order: { askedAt: 'ASC', id: 'ASC' } });
  },

  async change(tx: OrganizationTransaction, id: string, values: Partial<ClientQuestionRow>): Promise<void> {
    await tx.of(ClientQuestionRow).update({ organizationId: tx.organizationId, id }, values);
  },

  /** The mail of an answer becomes `sending`, for one worker alone; null where it does not wait. */
  async claimMail(tx: OrganizationTransaction, id: string): Promise<ClientQuestionRow | null> {
    const { affected } = await tx
      .of(ClientQuestionRow)
      .update(
        { organizationId: tx.organizationId, id, mailState: 'queued' },
        { mailState: 'sending', mailAttempts: () => 'mail_attempts + 1' },
      );
    return affected === 1 ? this.one(tx, id) : null;
  },

  /** How a mail ended; nothing where the answer was changed while it was under way, for then its own mail waits. */
  async settleMail(tx: OrganizationTransaction, id: string, values: Pick<ClientQuestionRow, 'mailState' | 'mailAnswer'>): Promise<boolean> {
    const { affected } = await tx.of(ClientQuestionRow).update({ organizationId: tx.organizationId, id, mailState: 'sending' }, values);
    return affected === 1;
  },

  /** Where the answer to a member goes, and in which language. */
  async askerOf(tx: OrganizationTransaction, personId: string | null): Promise<Pick<ClientQuestionRow, 'email' | 'language'>> {
    const [row] = await tx.query<{ email: string; language: 'en' | 'es' }>('select email, language from person where id = $1', [personId]);
    return row ?? { email: null, language: 'en' };
  },
};
