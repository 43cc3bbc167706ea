import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { type Rule, judgeValues, text } from '../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { requireProperty } from '../../portfolio/properties/property-scope.service.js';
import { cleanSkills } from '../skills.js';
import type { PartOfOrder, WordsOf, WorkOrderRow } from '../orders/work-order.entity.js';
import type { WorkOrderInput } from '../orders/work-order.input.js';
import { ESTIMATE_MINUTES, WORK_ORDER_KINDS, type WorkOrderKind } from '../orders/work-order-kinds.js';
import { type OrderSubject, workOrders } from '../orders/work-order.repository.js';

/** What a work order keeps of its input. */
export type OrderValues = Pick<
  WorkOrderRow,
  | 'propertyId'
  | 'controllerId'
  | 'meterId'
  | 'zoneId'
  | 'kind'
  | 'what'
  | 'wordsOf'
  | 'estimateMinutes'
  | 'notBefore'
  | 'dueOn'
  | 'skills'
  | 'labourHours'
  | 'labourRate'
  | 'parts'
>;

const refuse = (field: string, found: unknown, expected: string) => platformProblems.valueRefused({ field, found, expected });

const NOT_NEGATIVE: Rule = (value: number) => (value >= 0 ? null : '0 or more, or nothing where it is not known');

function partsOf(input: WorkOrderInput): PartOfOrder[] {
  return (input.parts ?? []).map(({ name, count, price }, place) => {
    if (!name.trim()) throw refuse(`parts[${place}].name`, name, 'the name of the part');
    if (!(count > 0)) throw refuse(`parts[${place}].count`, count, 'more than 0');
    if (!(price >= 0)) throw refuse(`parts[${place}].price`, price, '0 or more');
    return { name: name.trim(), count, price };
  });
}

function kindOf(input: WorkOrderInput): WorkOrderKind {
  const kind = WORK_ORDER_KINDS.find((known) => known === input.kind);
  if (!kind) throw refuse('kind', input.kind, `one of ${WORK_ORDER_KINDS.join(', ')}`);
  return kind;
}

const WORDS_OF = ['finding', 'season'] as const;

/** Of what the product wrote the words of an order. */
function wordsOf(input: WorkOrderInput, finding: OrderSubject | null): WordsOf | null {
  if (!input.wordsOf) return null;
  const known = WORDS_OF.find((each) => each === input.wordsOf);
  if (!known) throw refuse('wordsOf', input.wordsOf, `one of ${WORDS_OF.join(', ')}`);
  return known === 'finding' && !finding ? null : known;
}

const SUBJECT = ['controllerId', 'meterId', 'zoneId'] as const;

/** What an order is about: where the input names no controller, meter or zone, the finding's are meant. */
async function subjectOf(tx: OrganizationTransaction, input: WorkOrderInput, finding: OrderSubject | null): Promise<OrderSubject> {
  const subject = { controllerId: input.controllerId || null, meterId: input.meterId || null, zoneId: input.zoneId || null };
  for (const field of SUBJECT) subject[field] ??= finding?.[field] ?? null;
  const [stranger] = await workOrders.strangers(tx, input.propertyId, subject);
  if (stranger) throw refuse(stranger, subject[stranger], 'something that stands on this property');
  return subject;
}

function daysOf({ notBefore = null, dueOn = null }: WorkOrderInput): Pick<OrderValues, 'notBefore' | 'dueOn'> {
  if (notBefore !== null && dueOn !== null && dueOn < notBefore)
    throw refuse('dueOn', dueOn, `${notBefore}, the first day on which it may be done, or later`);
  return { notBefore, dueOn };
}

/** What is kept of an input, judged: a known kind, no negative numbers, and controller, meter and zone of this property. */
export async function orderValues(tx: OrganizationTransaction, input: WorkOrderInput, finding: OrderSubject | null): Promise<OrderValues> {
  judgeValues(input, { what: text, estimateMinutes: NOT_NEGATIVE, labourHours: NOT_NEGATIVE, labourRate: NOT_NEGATIVE });
  if (input.deviceRecordId && !isUuid(input.deviceRecordId))
    throw refuse('deviceRecordId', input.deviceRecordId, 'a UUID made by the device');
  await requireProperty(tx, input.propertyId);
  const kind = kindOf(input);
  return {
    ...(await subjectOf(tx, input, finding)),
    propertyId: input.propertyId,
    kind,
    what: input.what?.trim() ?? '',
    wordsOf: wordsOf(input, finding),
    estimateMinutes: input.estimateMinutes ?? ESTIMATE_MINUTES[kind],
    ...daysOf(input),
    skills: cleanSkills(input.skills ?? []),
    labourHours: input.labourHours ?? null,
    labourRate: input.labourRate ?? null,
    parts: partsOf(input),
  };
}
