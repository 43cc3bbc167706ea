import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import { crewMembers } from './crew-member.repository.js';

/** The ids of the members who go with a crew. */
export const memberIdsOfCrew = defineLoader<string, readonly string[]>(async (tx, ids) => {
  const groups = grouped(await crewMembers.ofCrews(tx, ids), (row) => row.crewId);
  return new Map([...groups].map(([crewId, rows]) => [crewId, rows.map(({ memberId }) => memberId)]));
}, []);
