import { defineLoader } from '../../graphql/loader.js';
import type { MemberRow } from './member.entity.js';
import { members } from './member.repository.js';

/** The member of an id, with the person. */
export const memberOfId = defineLoader<string, MemberRow | null>(
  async (tx, ids) => new Map((await members.ofIds(tx, ids)).map((row) => [row.id, row])),
  null,
);
