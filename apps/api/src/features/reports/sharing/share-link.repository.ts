import { randomUUID } from 'node:crypto';
import { In } from 'typeorm';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { MailStopRow } from '../sending/mails/mail-stop.entity.js';
import { ShareLinkRow } from './share-link.entity.js';
import { ShareVisitRow } from './share-visit.entity.js';

const MOST_LETTERS = 200;

/** How often a link's page was opened, and one of its files taken: a download is not a visit. */
export interface LinkUse {
  readonly visits: number;
  readonly downloads: number;
}

/** Of a link that nobody has used. */
export const UNUSED: LinkUse = { visits: 0, downloads: 0 };

/** All SQL of links that show a report, and of links that stop its mails. */
export const shareLinks = {
  ofReports(tx: OrganizationTransaction, reportIds: readonly string[]): Promise<ShareLinkRow[]> {
    return tx
      .of(ShareLinkRow)
      .find({ where: { organizationId: tx.organizationId, reportId: In([...reportIds]) }, order: { createdAt: 'DESC', id: 'ASC' } });
  },

  async one(tx: OrganizationTransaction, id: string): Promise<ShareLinkRow | null> {
    return isUuid(id) ? tx.of(ShareLinkRow).findOneBy({ organizationId: tx.organizationId, id }) : null;
  },

  /** How often the pages of some links were opened, and their files taken. */
  async use(tx: OrganizationTransaction, ids: readonly string[]): Promise<Map<string, LinkUse>> {
    const rows = await tx.query<LinkUse & { id: string }>(
      `select share_link_id as id, count(*) filter (where file = 'page')::int as visits, count(*) filter (where file like 'report.%')::int as downloads
         from share_visit where organization_id = $1 and share_link_id = any($2::uuid[]) group by 1`,
      [tx.organizationId, ids],
    );
    return new Map(rows.map(({ id, visits, downloads }) => [id, { visits, downloads }]));
  },

  /** The link that was made under a name. */
  named(tx: OrganizationTransaction, nameHash: Buffer): Promise<ShareLinkRow | null> {
    return tx.of(ShareLinkRow).findOneBy({ organizationId: tx.organizationId, nameHash });
  },

  async add(
    tx: OrganizationTransaction,
    link: Pick<ShareLinkRow, 'reportId' | 'tokenHash' | 'expiresAt'> & Partial<Pick<ShareLinkRow, 'nameHash' | 'salt' | 'days'>>,
  ): Promise<ShareLinkRow> {
    const id = randomUUID();
    await tx.of(ShareLinkRow).insert({ ...link, organizationId: tx.organizationId, id, createdBy: tx.actor.personId });
    return (await this.one(tx, id))!;
  },

  async revoke(tx: OrganizationTransaction, id: string): Promise<void> {
    await tx.query('update share_link set revoked_at = now() where organization_id = $1 and id = $2 and revoked_at is null', [
      tx.organizationId,
      id,
    ]);
  },

  /** The link of a secret, if it still serves. */
  async serving(tx: OrganizationTransaction, tokenHash: Buffer): Promise<ShareLinkRow | null> {
    const [row] = await tx.query<{ id: string }>(
      'select id from share_link where organization_id = $1 and token_hash = $2 and revoked_at is null and expires_at > now()',
      [tx.organizationId, tokenHash],
    );
    return row ? this.one(tx, row.id) : null;
  },

  async logVisit(tx: OrganizationTransaction, shareLinkId: string, file: string, device: string | null): Promise<void> {
    const row = { organizationId: tx.organizationId, id: randomUUID(), shareLinkId, file, device: device?.slice(0, MOST_LETTERS) ?? null };
    await tx.of(ShareVisitRow).insert(row);
  },

  /** The recipient of the mail that a stop link came in. */
  async recipientOf(tx: OrganizationTransaction, stopHash: Buffer): Promise<string | null> {
    const [row] = await tx.query<{ recipient: string }>(
      'select recipient from report_mail where organization_id = $1 and (stop_hash = $2 or $2 = any(former_stop_hashes))',
      [tx.organizationId, stopHash],
    );
    return row?.recipient ?? null;
  },

  async stop(tx: OrganizationTransaction, email: string): Promise<void> {
    await tx
      .of(MailStopRow)
      .createQueryBuilder()
      .insert()
      .values({ organizationId: tx.organizationId, id: randomUUID(), email: email.toLowerCase() })
      .orIgnore()
      .execute();
  },
};
