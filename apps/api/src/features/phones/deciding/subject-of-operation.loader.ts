import { defineLoader } from '../../../platform/graphql/loader.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { type Subject, subjects } from './subject.repository.js';

/** What speaks most closely of where it was comes first. */
const NAMED_BY = ['zoneId', 'meterId', 'controllerId', 'workOrderId', 'visitId', 'stopId'] as const;

/** The ids by which a body names what it speaks of; none where the body is broken. */
function idsOf(body: string): readonly string[] {
  try {
    const fields = JSON.parse(body) as Readonly<Record<string, unknown>> | null;
    return NAMED_BY.flatMap((name) => {
      const id = fields?.[name];
      return typeof id === 'string' && isUuid(id) ? [id.toLowerCase()] : [];
    });
  } catch (problem) {
    if (problem instanceof SyntaxError) return [];
    throw problem;
  }
}

/** What an operation speaks of, by its body; null where that names nothing that is here. */
export const subjectOfOperation = defineLoader<string, Subject | null>(async (tx, bodies) => {
  const ids = new Map(bodies.map((body) => [body, idsOf(body)]));
  const found = new Map((await subjects.ofIds(tx, [...new Set([...ids.values()].flat())])).map((one) => [one.id, one]));
  return new Map(bodies.map((body) => [body, ids.get(body)!.flatMap((id) => found.get(id) ?? [])[0] ?? null]));
}, null);
