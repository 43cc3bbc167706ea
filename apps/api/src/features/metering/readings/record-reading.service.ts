import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../platform/database/organization-transaction.js';
import { platformProblems } from '../../../platform/problems/platform.problems.js';
import { Events } from '../../../platform/records/events.js';
import { isUuid } from '../../../platform/records/uuid.js';
import { ReadingRecorded } from '../reading-recorded.event.js';
import { type KeptMeter, requireMeter } from '../require-meter.js';
import { judgeRegister } from './judge-register.js';
import type { ReadingRow } from './reading.entity.js';
import type { ReadingInput } from './reading.input.js';
import { readings } from './reading.repository.js';

/** What became of a reading that was sent; `kept` is what stands under its name or in its place. */
export interface RecordedReading {
  readonly outcome: 'kept' | 'conflict';
  readonly kept: ReadingRow;
}

const LONGEST_NOTE = 2000;
/** A phone's clock may be wrong by days; a reading from further ahead is a slip of the finger. */
const MOST_AHEAD_MS = 3 * 86_400_000;

const kept = (reading: ReadingRow): RecordedReading => ({ outcome: 'kept', kept: reading });
const conflict = (reading: ReadingRow): RecordedReading => ({ outcome: 'conflict', kept: reading });

/** Keeps a reading once, however often it is sent. */
@Injectable()
export class RecordReading {
  constructor(private readonly events: Events) {}

  async run(tx: OrganizationTransaction, input: ReadingInput): Promise<RecordedReading> {
    check(input);
    const before = await readings.ofDeviceRecord(tx, input.deviceRecordId);
    // What a person has recorded stays acknowledged to them, also when the property is no longer theirs to see.
    if (before && before.personId === tx.actor.personId) return this.again(tx, before, input);
    const meter = await requireMeter(tx, input.meterId);
    await readings.hold(tx, [meter.id]);
    return (await this.present(tx, meter, input)) ?? this.keep(tx, meter, input);
  }

  /** What already stands under the reading's name, in its place or instead of the one that it corrects. */
  private async present(tx: OrganizationTransaction, meter: KeptMeter, input: ReadingInput): Promise<RecordedReading | null> {
    const before = await readings.ofDeviceRecord(tx, input.deviceRecordId);
    if (before) return this.again(tx, before, input);
    if (input.replacesId) {
      const replaced = await this.replaced(tx, meter, input.replacesId);
      if (replaced.replacedById) return conflict(await this.standingFor(tx, replaced));
    }
    const [standing] = await readings.standingAt(tx, [{ meterId: meter.id, readAt: input.readAt }]);
    if (!standing || standing.id === input.replacesId) return null;
    return standing.register === input.register && standing.note === noteOf(input) ? kept(standing) : conflict(standing);
  }

  private async keep(tx: OrganizationTransaction, meter: KeptMeter, input: ReadingInput): Promise<RecordedReading> {
    const { deviceRecordId, readAt, register } = input;
    // The phone speaks of the reading by this name before anybody answers.
    const id = deviceRecordId.toLowerCase();
    const [inserted] = await readings.insert(tx, [
      {
        id,
        meterId: meter.id,
        readAt,
        register,
        source: 'crew',
        note: noteOf(input),
        deviceRecordId,
        typed: {},
        replacesId: input.replacesId ?? null,
      },
    ]);
    if (!inserted) return this.again(tx, (await readings.ofDeviceRecord(tx, deviceRecordId))!, input);
    const [reading] = await readings.ofIds(tx, [id]);
    await this.events.emit(tx, new ReadingRecorded(reading!, meter, await judgeRegister(tx, meter, reading!)));
    return kept(reading!);
  }

  /** The same name again: the same content is the same reading. */
  private async again(tx: OrganizationTransaction, before: ReadingRow, input: ReadingInput): Promise<RecordedReading> {
    if (before.personId !== tx.actor.personId) await requireMeter(tx, before.meterId);
    const same = sameContent(before, input) && sameId((await readings.replacedBy(tx, before.id))?.id, input.replacesId);
    return same ? kept(before) : conflict(before);
  }

  private async replaced(tx: OrganizationTransaction, meter: KeptMeter, replacesId: string): Promise<ReadingRow> {
    const [replaced] = isUuid(replacesId) ? await readings.ofIds(tx, [replacesId]) : [];
    if (!replaced || replaced.meterId !== meter.id)
      throw platformProblems.valueRefused({ field: 'replacesId', found: replacesId, expected: `a reading of meter ${meter.name}` });
    return replaced;
  }

  /** The last of a chain of corrections. */
  private async standingFor(tx: OrganizationTransaction, reading: ReadingRow): Promise<ReadingRow> {
    let last = reading;
    while (last.replacedById) [last] = (await readings.ofIds(tx, [last.replacedById])) as [ReadingRow];
    return last;
  }
}

const sameContent = (before: ReadingRow, input: ReadingInput): boolean =>
  sameId(before.meterId, input.meterId) &&
  before.readAt.getTime() === input.readAt.getTime() &&
  before.register === input.register &&
  before.note === noteOf(input);

const sameId = (a: string | null | undefined, b: string | null | undefined): boolean => (a ?? '').toLowerCase() === (b ?? '').toLowerCase();

const noteOf = (input: ReadingInput): string | null => input.note?.trim() || null;

/** No dial has more than twelve digits; the import refuses more, too. */
const MOST_REGISTER = 1e12;

function check(input: ReadingInput): void {
  const { deviceRecordId, register, readAt } = input;
  if (!isUuid(deviceRecordId))
    throw platformProblems.valueRefused({ field: 'deviceRecordId', found: deviceRecordId, expected: 'a UUID made by the device' });
  if (!(register >= 0 && register < MOST_REGISTER))
    throw platformProblems.valueRefused({
      field: 'register',
      found: register,
      expected: 'a number of at least 0 and at most twelve digits, as on the dial',
    });
  if (readAt.getTime() > Date.now() + MOST_AHEAD_MS)
    throw platformProblems.valueRefused({ field: 'readAt', found: readAt.toISOString(), expected: 'a time that is not in the future' });
  if ((noteOf(input)?.length ?? 0) > LONGEST_NOTE)
    throw platformProblems.valueRefused({
      field: 'note',
      found: `${noteOf(input)!.slice(0, 40)}…`,
      expected: `at most ${LONGEST_NOTE} characters`,
    });
}
