import { Injectable } from '@nestjs/common';
import type { VisitHours } from '@rillbook/routing/day/open-windows.js';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { above, judgeValues } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { KeptRecords, VersionConflict } from '../../../../platform/records/kept-records.js';
import { requireProperty } from '../../../portfolio/properties/property-scope.service.js';
import { cleanSkills } from '../../skills.js';
import { VisitTermsRow } from './visit-terms.entity.js';
import type { VisitHoursInput, VisitTermsInput } from './visit-terms.input.js';
import { visitTerms } from './visit-terms.repository.js';

const MOST_DAYS = 366;
const MINUTES_A_DAY = 1440;

/** Sets how often a property is visited and when it may be; terms that are there must still have the version that was read. */
@Injectable()
export class SetVisitTerms {
  constructor(private readonly records: KeptRecords) {}

  async run(
    tx: OrganizationTransaction,
    propertyId: string,
    version: number | null,
    input: VisitTermsInput,
  ): Promise<VisitTermsRow | VersionConflict> {
    const property = await requireProperty(tx, propertyId);
    const values = valuesOf(input);
    const [present] = await visitTerms.ofProperties(tx, [property.id]);
    if (!present) return this.records.create(tx, VisitTermsRow, { ...values, propertyId: property.id });
    return this.records.change<VisitTermsRow>(tx, VisitTermsRow, present.id, version ?? 0, { ...values });
  }
}

function valuesOf(input: VisitTermsInput): Pick<VisitTermsRow, 'everyDays' | 'visitMinutes' | 'skills' | 'hours'> {
  judgeValues(input, { everyDays: above(0, MOST_DAYS, 'days'), visitMinutes: above(0, MINUTES_A_DAY, 'minutes') });
  return {
    everyDays: input.everyDays ?? null,
    visitMinutes: input.visitMinutes ?? null,
    skills: cleanSkills(input.skills ?? []),
    hours: (input.hours ?? []).map(hoursOf),
  };
}

function hoursOf({ kind, weekdays, fromMinute, untilMinute }: VisitHoursInput, place: number): VisitHours {
  const refuse = (field: string, found: unknown, expected: string) =>
    platformProblems.valueRefused({ field: `hours[${place}].${field}`, found, expected });
  if (kind !== 'open' && kind !== 'closed') throw refuse('kind', kind, 'open or closed');
  if (!weekdays.length || weekdays.some((day) => day < 1 || day > 7))
    throw refuse('weekdays', weekdays, 'days from Monday 1 to Sunday 7, at least one');
  if (fromMinute < 0 || fromMinute >= MINUTES_A_DAY) throw refuse('fromMinute', fromMinute, `0 to ${MINUTES_A_DAY - 1}`);
  if (untilMinute <= fromMinute || untilMinute > MINUTES_A_DAY)
    throw refuse('untilMinute', untilMinute, `after ${fromMinute}, at most ${MINUTES_A_DAY}`);
  return { kind, weekdays: [...new Set(weekdays)].sort((one, other) => one - other), fromMinute, untilMinute };
}
