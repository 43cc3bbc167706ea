import { createHash, randomBytes } from 'node:crypto';
import { Inject, Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { Actor } from '../../database/actor.js';
import type { Role } from '../../database/actor.js';

const LONGEST_DAYS = 30;
const IDLE_DAYS = 14;

const digest = (token: string): Buffer => createHash('sha256').update(token).digest();

interface Found {
  person_id: string;
  organization_id: string;
}

interface Membership {
  id: string;
  role: Role;
  client_id: string | null;
}

/** Server-side sessions: the browser holds a random token, the database its hash. */
@Injectable()
export class Sessions {
  constructor(@Inject(DataSource) private readonly source: DataSource) {}

  /** Opens a session for a person whose password was verified; the token is told once. */
  async open(personId: string, organizationId: string, device: string | undefined): Promise<string> {
    const token = randomBytes(32).toString('base64url');
    await this.source.query('delete from session where person_id = $1 and expires_at < now()', [personId]);
    await this.source.query(
      `insert into session (token_hash, person_id, organization_id, expires_at, device) values ($1, $2, $3, now() + make_interval(days => $4), $5)`,
      [digest(token), personId, organizationId, LONGEST_DAYS, device?.slice(0, 200) ?? null],
    );
    return token;
  }

  /** The actor of a token, or null when the session has ended or the membership was retired. */
  async actorOf(token: string): Promise<Actor | null> {
    const [found] = (await this.source.query(
      `select person_id, organization_id from session where token_hash = $1 and expires_at > now() and last_seen_at > now() - make_interval(days => $2)`,
      [digest(token), IDLE_DAYS],
    )) as Found[];
    if (!found) return null;
    await this.source.query(
      `update session set last_seen_at = now() where token_hash = $1 and last_seen_at < now() - interval '5 minutes'`,
      [digest(token)],
    );
    const membership = await this.membership(found.person_id, found.organization_id);
    return (
      membership && {
        organizationId: found.organization_id,
        personId: found.person_id,
        memberId: membership.id,
        role: membership.role,
        clientId: membership.client_id,
        way: 'screen',
      }
    );
  }

  /** The memberships of a person, read as that person: row-level security shows no others. */
  async memberships(personId: string): Promise<{ organizationId: string; organizationName: string; role: Role }[]> {
    return this.source.transaction(async (manager) => {
      await manager.query(`select set_config('app.person_id', $1, true)`, [personId]);
      return (await manager.query(
        `select member.organization_id as "organizationId", organization.name as "organizationName", member.role from member join organization on organization.id = member.organization_id where member.person_id = $1 and member.retired_at is null order by organization.name`,
        [personId],
      )) as { organizationId: string; organizationName: string; role: Role }[];
    });
  }

  async close(token: string): Promise<void> {
    await this.source.query('delete from session where token_hash = $1', [digest(token)]);
  }

  /** Ends all sessions of a person, on all devices. */
  async closeAll(personId: string): Promise<void> {
    await this.source.query('delete from session where person_id = $1', [personId]);
  }

  private async membership(personId: string, organizationId: string): Promise<Membership | null> {
    return this.source.transaction(async (manager) => {
      await manager.query(`select set_config('app.person_id', $1, true)`, [personId]);
      const rows = (await manager.query(
        'select id, role, client_id from member where person_id = $1 and organization_id = $2 and retired_at is null',
        [personId, organizationId],
      )) as Membership[];
      return rows[0] ?? null;
    });
  }
}
