import type { Operation } from '../../../apps/web/src/offline/operation.js';
import { afterEvent, EMPTY, type Event, nextBatch, nextPicture, type Outbox } from '../../../apps/web/src/offline/outbox.js';
import { restoreOutbox, storedOperation } from '../../../apps/web/src/offline/restore.js';
import { ModelServer } from './model-server.js';
import { type Saying, StopsOfPhone } from './stops-of-phone.js';

type Line = 'good' | 'cut before' | 'cut after' | 'twice' | 'reordered' | 'server breaks' | 'too large' | 'half answered' | 'hangs';

/** Something that happens to the phones, the line, the server or the office. */
export type Step =
  | { readonly what: 'save'; readonly device: number; readonly subject: number; readonly value: number }
  | { readonly what: 'photo'; readonly device: number }
  | { readonly what: 'poison'; readonly device: number }
  | { readonly what: 'withdraw'; readonly device: number; readonly subject: number }
  | { readonly what: 'arrive' | 'work' | 'take back'; readonly device: number; readonly stop: number }
  | { readonly what: 'send'; readonly device: number; readonly line: Line }
  | { readonly what: 'picture'; readonly device: number; readonly line: 'good' | 'cut before' | 'cut after' }
  | { readonly what: 'late copy'; readonly nth: number }
  | { readonly what: 'crash'; readonly device: number; readonly during: 'rest' | 'sending' }
  | { readonly what: 'full'; readonly device: number; readonly isFull: boolean }
  | { readonly what: 'clock'; readonly device: number; readonly days: number }
  | { readonly what: 'upgrade'; readonly device: number }
  | { readonly what: 'office'; readonly subject: number; readonly value: number }
  | { readonly what: 'again'; readonly device: number }
  | { readonly what: 'passes'; readonly days: number };

const DAY_MS = 86_400_000;
const BEGIN = Date.parse('2026-06-01T12:00:00Z');

interface Phone {
  outbox: Outbox;
  /** what is in the store, as it is written there */
  rows: Readonly<Record<string, unknown>>[];
  facts: Readonly<Record<string, unknown>>;
  isFull: boolean;
  skewMs: number;
  /** what is on its way and never answered; until it is given up nothing else is sent */
  hanging: readonly string[] | null;
  readonly stops: StopsOfPhone;
}

/** What the proof leaves out, to see that it would notice. */
interface Wish {
  /** the server does again what it has done */
  readonly forgets?: boolean;
  /** the phone waits without end for an answer */
  readonly waits?: boolean;
  /** the phone blames a whole batch for one record in it */
  readonly blamesAll?: boolean;
  /** the phone says nothing of an arrival that had left when it was taken back */
  readonly keepsQuiet?: boolean;
}

/** Several phones, a line between, one server: the product's own reducer and restore, the rest a model. */
export class Fleet {
  deliveries = 0;
  private readonly phones: Phone[];
  private readonly server: ModelServer;
  private readonly copies: (readonly Operation[])[] = [];
  /** what a person was told is saved, by key; its last body */
  private readonly acknowledged = new Map<string, string>();
  /** keys of records on which the server breaks, and everything that comes with them */
  private readonly poisoned = new Set<string>();
  private made = 0;
  private elapsedMs = 0;

  constructor(
    count: number,
    private readonly wish: Wish = {},
  ) {
    this.server = new ModelServer(wish.forgets ?? false);
    this.phones = Array.from({ length: count }, () => ({
      outbox: EMPTY,
      rows: [],
      facts: {},
      isFull: false,
      skewMs: 0,
      hanging: null,
      stops: new StopsOfPhone(wish.keepsQuiet ?? false),
    }));
  }

  get conflicts(): number {
    return this.server.conflicts.size;
  }

  do(step: Step): void {
    this.elapsedMs += 60_000;
    switch (step.what) {
      case 'late copy':
        // A delivery that was held up somewhere comes when nobody waits for it any more.
        return this.late(step.nth);
      case 'office':
        return this.server.edit(step.subject, step.value);
      case 'passes':
        return void (this.elapsedMs += step.days * DAY_MS);
      case 'full':
      case 'clock':
        return whereItIs(this.phones[step.device % this.phones.length]!, step);
      default:
        return this.doOn(this.phones[step.device % this.phones.length]!, step);
    }
  }

  /** Everything has signal and room again, until nothing waits. */
  quiet(): void {
    for (const phone of this.phones) {
      phone.isFull = false;
      this.giveUp(phone);
      this.happen(phone, {
        type: 'asked again',
        keys: phone.outbox.operations.filter(({ state }) => state === 'refused').map(({ key }) => key),
      });
      for (let round = 0; round < 1000 && nextBatch(phone.outbox).length > 0; round += 1) this.send(phone, 'good');
      for (let round = 0; round < 1000 && nextPicture(phone.outbox); round += 1) this.picture(phone, 'good');
    }
  }

  /** What must hold once it is quiet; throws with what does not. */
  judge(): void {
    for (const phone of this.phones) for (const one of phone.outbox.operations) this.judgeOne(one);
    for (const [key, body] of this.acknowledged) {
      if (this.poisoned.has(key)) continue;
      if (this.server.bodyOf(key) !== body) throw new Error(`${key} was told as saved and is lost or another: ${this.server.bodyOf(key)}`);
    }
    this.server.judge();
    this.judgeVisits();
    const told = new Set(
      this.phones.flatMap(({ outbox }) => outbox.operations).flatMap(({ key, told: said }) => (said?.verdict === 'conflict' ? [key] : [])),
    );
    for (const key of told) if (!this.server.conflicts.has(key)) throw new Error(`${key} is a conflict that the office does not see`);
  }

  /** A stop is visited exactly where somebody said so last, or did something there. */
  private judgeVisits(): void {
    for (const stop of new Set(this.phones.flatMap(({ stops }) => stops.all))) {
      const wanted = this.phones.some(({ stops }) => stops.isThere(stop));
      if (this.server.isVisited(stop) !== wanted) throw new Error(`${stop} is ${wanted ? 'not visited, and was' : 'visited, and was not'}`);
    }
  }

  /** On what the server breaks the person is told; everything else has arrived. */
  private judgeOne({ key, state, picture }: Operation): void {
    if (state !== (this.poisoned.has(key) ? 'refused' : 'sent') || picture === 'here')
      throw new Error(`${key} is still ${state}, its picture ${picture}`);
  }

  private doOn(phone: Phone, step: Exclude<Step, { what: 'late copy' | 'office' | 'passes' | 'full' | 'clock' }>): void {
    switch (step.what) {
      case 'save':
        return void this.save(phone, `subject ${step.subject}`, JSON.stringify({ subject: step.subject, value: step.value }), false);
      case 'photo':
      case 'poison':
        return this.saveOther(phone, step.what);
      case 'withdraw':
        return this.withdraw(phone, `subject ${step.subject}`);
      case 'arrive':
      case 'work':
      case 'take back':
        return this.atStop(phone, step.what, `stop ${step.stop}`);
      default:
        return this.deliver(phone, step);
    }
  }

  private deliver(phone: Phone, step: Extract<Step, { what: 'send' | 'picture' | 'crash' | 'upgrade' | 'again' }>): void {
    switch (step.what) {
      case 'send':
        return this.send(phone, step.line);
      case 'picture':
        return this.picture(phone, step.line);
      case 'crash':
      case 'upgrade':
        return this.crash(phone, step);
      case 'again':
        return void this.happen(phone, { type: 'asked again', keys: phone.outbox.operations.map(({ key }) => key) });
    }
  }

  private late(nth: number): void {
    const copy = this.copies[nth % Math.max(1, this.copies.length)];
    if (copy && !copy.some(({ key }) => this.poisoned.has(key))) this.server.take(copy);
  }

  private crash(phone: Phone, step: Extract<Step, { what: 'crash' | 'upgrade' }>): void {
    if (step.what === 'upgrade') phone.rows = phone.rows.map(olderRow);
    else if (step.during === 'sending') this.happen(phone, { type: 'sending', keys: nextBatch(phone.outbox).map(({ key }) => key) });
    this.restart(phone);
  }

  /** @returns its key; null where the phone could not keep it */
  private save(phone: Phone, subject: string, body: string, hasPicture: boolean, kind = 'note'): string | null {
    this.made += 1;
    const said = { kind, payloadVersion: 1, body, subject, words: subject, hasPicture };
    if (!this.happen(phone, { type: 'saved', key: `key-${this.made}`, at: this.now(phone), said })) return null;
    const saved = phone.outbox.operations.findLast((one) => one.subject === subject);
    if (!saved || saved.body !== body) throw new Error('what was saved is not in the outbox');
    this.acknowledged.set(saved.key, body);
    return saved.key;
  }

  private atStop(phone: Phone, what: 'arrive' | 'work' | 'take back', stop: string): void {
    const save = ({ kind, subject, body }: Saying): string | null => this.save(phone, subject, body, false, kind);
    if (what === 'arrive') return void phone.stops.arrive(phone.outbox, stop, save);
    if (what === 'work') return phone.stops.work(phone.outbox, stop, save);
    phone.stops.takeBack(() => phone.outbox, stop, { save, withdraw: (subject) => this.withdraw(phone, subject) });
  }

  private saveOther(phone: Phone, what: 'photo' | 'poison'): void {
    const subject = what === 'photo' ? what : `${what} ${this.made}`;
    this.save(phone, subject, JSON.stringify({ [what]: this.made }), what === 'photo');
    const last = phone.outbox.operations.at(-1);
    if (last?.subject.startsWith('poison')) this.poisoned.add(last.key);
  }

  private withdraw(phone: Phone, subject: string): void {
    const gone = phone.outbox.operations.filter((one) => one.subject === subject && !one.hasLeft);
    if (this.happen(phone, { type: 'withdrawn', subject })) for (const { key } of gone) this.acknowledged.delete(key);
  }

  /** Its time is over: it was not answered. */
  private giveUp(phone: Phone): void {
    if (!phone.hanging || this.wish.waits) return;
    this.happen(phone, { type: 'unanswered', keys: phone.hanging });
    phone.hanging = null;
  }

  private send(phone: Phone, line: Line): void {
    this.giveUp(phone);
    if (phone.hanging) return;
    const batch = nextBatch(phone.outbox);
    const keys = batch.map(({ key }) => key);
    if (keys.length === 0 || !this.happen(phone, { type: 'sending', keys })) return;
    this.deliveries += 1;
    if (line === 'too large') return void this.happen(phone, { type: 'too large', keys });
    if (line === 'cut before') return void this.happen(phone, { type: 'unanswered', keys });
    if (line === 'server breaks' || keys.some((key) => this.poisoned.has(key))) return this.broke(phone, keys);
    this.copies.push(batch);
    if (line === 'hangs') phone.hanging = keys;
    else this.carry(phone, batch, line);
  }

  /** The server is reached, in whatever way. */
  private carry(phone: Phone, batch: readonly Operation[], line: Line): void {
    const keys = batch.map(({ key }) => key);
    const verdicts = this.server.take(line === 'reordered' ? batch.toReversed() : batch);
    if (line === 'twice') this.server.take(batch);
    if (line === 'cut after') return void this.happen(phone, { type: 'unanswered', keys });
    const heard = line === 'half answered' ? verdicts.slice(0, Math.floor(verdicts.length / 2)) : verdicts;
    this.happen(phone, { type: 'answered', verdicts: heard, at: this.now(phone) });
    this.happen(phone, { type: 'unanswered', keys });
  }

  private broke(phone: Phone, keys: readonly string[]): void {
    const problem = { code: 'UNFORESEEN', message: 'broke' };
    const blamed = this.wish.blamesAll ? keys.map((key) => [key]) : [keys];
    for (const these of blamed) this.happen(phone, { type: 'failed', keys: these, problem });
  }

  private picture(phone: Phone, line: 'good' | 'cut before' | 'cut after'): void {
    const photo = nextPicture(phone.outbox);
    if (!photo || line === 'cut before') return;
    this.server.keepPicture(photo.key);
    if (line === 'good') this.happen(phone, { type: 'picture sent', key: photo.key });
  }

  /** One transaction of the store: all of it, or nothing and the person is told. */
  private happen(phone: Phone, event: Event): boolean {
    if (phone.isFull && event.type === 'saved') return false;
    phone.outbox = afterEvent(phone.outbox, event);
    phone.rows = phone.outbox.operations.map((one) => structuredClone(storedOperation(one)));
    const { nextSeq, batch, narrowed, lastSentAt } = phone.outbox;
    phone.facts = { nextSeq, batch, narrowed, lastSentAt };
    return true;
  }

  private restart(phone: Phone): void {
    phone.hanging = null;
    phone.outbox = restoreOutbox(structuredClone(phone.rows), {}, phone.facts);
    this.happen(phone, { type: 'restarted', at: this.now(phone) });
  }

  private now(phone: Phone): string {
    return new Date(BEGIN + this.elapsedMs + phone.skewMs).toISOString();
  }
}

/** The version before wrote without form, pictures and what had left. */
const olderRow = ({ form: _, ...row }: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> =>
  row['picture'] === 'none' && row['hasLeft'] ? withoutNew(row) : { ...row, form: 1 };

function withoutNew({ hasLeft: _, picture: __, ...row }: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  return row;
}

/** Its room, its clock. */
function whereItIs(phone: Phone, step: Extract<Step, { what: 'full' | 'clock' }>): void {
  if (step.what === 'full') phone.isFull = step.isFull;
  else phone.skewMs = step.days * DAY_MS;
}
