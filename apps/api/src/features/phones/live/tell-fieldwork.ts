import { Injectable } from '@nestjs/common';
import { Live } from '../../../platform/database/live.js';
import { Events } from '../../../platform/records/events.js';
import { RecordChanged } from '../../../platform/records/record-changed.event.js';

/** What pages that show the day listen to. */
export const FIELDWORK = 'fieldwork';

/** Changes of these are seen on the day's page. */
const SEEN: ReadonlySet<string> = new Set(['work_order', 'stop', 'route', 'visit', 'crew']);

/** Has open pages hear of what is changed in the day, by the office or by a phone. */
@Injectable()
export class TellFieldwork {
  constructor(events: Events, live: Live) {
    events.on(RecordChanged, async (tx, { thing }) => {
      if (SEEN.has(thing)) await live.tell(tx, FIELDWORK);
    });
  }
}
