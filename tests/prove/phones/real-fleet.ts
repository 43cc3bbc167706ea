import type { CDPSession } from 'playwright-core';
import type { Said } from '../../../apps/web/src/offline/operation.js';
import type { Step } from '../../web/offline/fleet.js';
import type { Person } from './door.js';
import type { Harness } from './harness.js';
import { type Fault, type Line, POISON } from './line.js';
import { judgeEffects, RealStops } from './real-stops.js';
import type { KillableProduct } from './server.js';

declare const harness: Harness;

/** Where a history takes place: one stop with three zones, and others to which the phones come and from which they go. */
export interface Place {
  readonly stopId: string;
  readonly zoneIds: readonly string[];
  readonly otherStopIds: readonly string[];
}

export interface Device {
  readonly person: Person;
  readonly line: Line;
  readonly quota: CDPSession;
}

const DAY_MS = 86_400_000;
const SMALLEST_QUOTA = 1;
const ARRIVED = '2026-09-24T15:00:00.000Z';
const MINUTE_MS = 60_000;
const MOST_ROUNDS = 60;

/** The phones of one history on the real stack: the steps of the model, done to the product's own code in Chromium. */
export class RealFleet {
  operations = 0;
  readonly conflicts = new Set<string>();
  private readonly acknowledged = new Map<string, string>();
  /** keys of records on which the server breaks: they stay on the phone, refused */
  private readonly poisoned = new Set<string>();
  private readonly skews: number[];
  private elapsedMs = 0;
  private made = 0;
  /** by what name each phone speaks of the visit; the first one's is the visit's own */
  private readonly visitIds: string[] = [];
  private readonly stops: RealStops;

  constructor(
    private readonly product: KillableProduct,
    private readonly devices: readonly Device[],
    private readonly office: Person,
    private readonly place: Place,
    private readonly name: string,
  ) {
    this.skews = devices.map(() => 0);
    this.stops = new RealStops(product, place.otherStopIds, place.zoneIds[0]!);
  }

  /** Empty phones that have all arrived: the first one began the visit, the others joined it under names of their own. */
  async begin(): Promise<void> {
    for (const at of this.devices.keys()) await this.open(at);
    const said = { kind: 'arrive', body: JSON.stringify({ stopId: this.place.stopId, arrivedAt: ARRIVED }), subject: 'arrive' };
    for (const at of this.devices.keys()) {
      this.visitIds.push((await this.save(at, said, 0)) ?? '');
      this.devices[at]!.line.set('good');
      // Two histories at once may be in each other's way: a phone then sends again.
      await this.sendAll(at);
    }
  }

  async do(step: Step): Promise<void> {
    this.elapsedMs += MINUTE_MS;
    switch (step.what) {
      case 'office':
        return this.edit(step.subject % this.place.zoneIds.length, step.value);
      case 'passes':
        this.elapsedMs += step.days * DAY_MS;
        return this.setClocks();
      case 'late copy':
        return this.devices[step.nth % this.devices.length]!.line.deliverLate(step.nth);
      default:
        return this.doOn(step.device % this.devices.length, step);
    }
  }

  /** Everything has signal and room again, until nothing waits. */
  async quiet(): Promise<void> {
    for (const [at, device] of this.devices.entries()) {
      await this.fill(at, false);
      device.line.set('good');
      await this.open(at);
      await device.person.page.evaluate(() => harness.askAgain(true));
      await this.sendAll(at);
    }
  }

  private async sendAll(at: number): Promise<void> {
    for (let round = 0; round < MOST_ROUNDS && (await this.isWaiting(at)); round += 1)
      await this.devices[at]!.person.page.evaluate(() => harness.send(false));
  }

  /** What must hold once it is quiet; throws with what does not. */
  async judge(): Promise<void> {
    const told = await this.toldAsConflicts();
    await this.judgeJournal();
    const [visitId = ''] = this.visitIds;
    await judgeEffects(this.product, { stopId: this.place.stopId, visitId, acknowledged: this.acknowledged });
    await this.stops.judge();
    const { openOperations } = await this.office.ask('{ openOperations { key verdict } }');
    const open = new Set(openOperations.map(({ key }: { key: string }) => key));
    for (const key of told) {
      if (!open.has(key)) throw new Error(`${key} is a conflict that the office does not see`);
      this.conflicts.add(key);
      await this.office.ask('mutation($key: ID!) { settleOperation(key: $key) { key } }', { key });
    }
  }

  private async toldAsConflicts(): Promise<ReadonlySet<string>> {
    const told = new Set<string>();
    for (const { person } of this.devices)
      for (const one of await person.page.evaluate(() => harness.operations())) {
        if (one.state !== (this.poisoned.has(one.key) ? 'refused' : 'sent') || one.picture === 'here' || one.picture === 'refused')
          throw new Error(`${one.key} (${one.subject}) is still ${one.state}, its picture ${one.picture}: ${JSON.stringify(one.told)}`);
        if (one.told?.verdict === 'conflict') told.add(one.key);
      }
    return told;
  }

  /** The phones of this history are thrown away, so that the next one begins with others. */
  async end(): Promise<void> {
    for (const [at, { person }] of this.devices.entries()) await person.page.evaluate((name) => harness.end(name), this.storeOf(at));
  }

  private async judgeJournal(): Promise<void> {
    const rows = await this.product.sql<{ id: string; body: string; verdict: string }>(
      'select id, body, verdict from field_operation where id = any($1)',
      [[...this.acknowledged.keys()]],
    );
    const kept = new Map(rows.map((row) => [row.id, row]));
    for (const [key, body] of this.acknowledged) {
      const row = kept.get(key);
      if (row?.body !== body) throw new Error(`${key} was told as saved and is lost or another: ${row?.body}`);
      if (row.verdict === 'refused') throw new Error(`${key} was refused: ${body}`);
    }
  }

  private async doOn(at: number, step: Exclude<Step, { what: 'office' | 'passes' | 'late copy' }>): Promise<void> {
    switch (step.what) {
      case 'save':
        await this.save(at, this.said(at, step.subject, step.value), 0);
        return;
      case 'photo':
        await this.save(at, this.photo(at), this.made + 1);
        return;
      case 'poison':
        return this.poison(at);
      case 'withdraw':
        return this.withdraw(at, `subject ${step.subject}`);
      case 'arrive':
      case 'work':
      case 'take back':
        return this.atStop(at, step);
      case 'full':
        return this.fill(at, step.isFull);
      case 'clock':
        this.skews[at] = step.days * DAY_MS;
        return this.setClocks();
      default:
        return this.deliver(at, step);
    }
  }

  private async deliver(at: number, step: Extract<Step, { what: 'send' | 'picture' | 'again' | 'crash' | 'upgrade' }>): Promise<void> {
    switch (step.what) {
      case 'send':
      case 'picture':
        return this.send(at, step.line);
      case 'again':
        return this.devices[at]!.person.page.evaluate(() => harness.askAgain(false).catch(() => undefined));
      case 'crash':
      case 'upgrade':
        return this.crash(at, step);
    }
  }

  private async atStop(at: number, step: Extract<Step, { what: 'arrive' | 'work' | 'take back' }>): Promise<void> {
    const arrivedAt = new Date(Date.parse(ARRIVED) + this.made * 1000).toISOString();
    const { kept, gone } = await this.stops.happen(this.devices[at]!.person.page, at, step, arrivedAt);
    for (const key of gone) this.acknowledged.delete(key);
    for (const { key, body } of kept) this.acknowledged.set(key, body);
    this.made += kept.length;
    this.operations += kept.length;
  }

  private async withdraw(at: number, name: string): Promise<void> {
    const { page } = this.devices[at]!.person;
    // What a full phone cannot write is not withdrawn.
    const gone = await page.evaluate((subject) => harness.withdraw(subject).catch(() => []), name);
    for (const key of gone) this.acknowledged.delete(key);
  }

  /** The page dies: at rest, in the middle of a delivery, or to come back as a newer version on older rows. */
  private async crash(at: number, step: Extract<Step, { what: 'crash' | 'upgrade' }>): Promise<void> {
    const { person, line } = this.devices[at]!;
    if (step.what === 'upgrade') await person.page.evaluate((name) => harness.olderRows(name), this.storeOf(at));
    else if (step.during === 'sending') {
      line.set('good');
      await person.page.evaluate(() => void harness.send(false).catch(() => undefined));
    }
    await this.open(at);
  }

  private async send(at: number, fault: Fault): Promise<void> {
    const { person, line } = this.devices[at]!;
    line.set(fault);
    await person.page.evaluate((hangs) => harness.send(hangs).catch(() => undefined), fault === 'hangs');
  }

  /** The server dies while a delivery is under way, and comes back. */
  async killDuring(at: number): Promise<void> {
    await this.save(at, this.said(at, 0, this.made % 6), 0);
    await this.send(at, 'killed');
    // Where nothing was under way it dies at rest.
    await this.product.kill();
    await this.product.begin();
  }

  private async save(at: number, said: Omit<Said, 'payloadVersion' | 'words'>, picture: number): Promise<string | null> {
    const whole: Said = { payloadVersion: 1, words: said.subject, hasPicture: picture > 0, ...said };
    const { page } = this.devices[at]!.person;
    const saved = await page.evaluate(([what, bytes]) => harness.save(what, bytes), [whole, picture] as const);
    if (!saved) return null;
    this.made += 1;
    this.operations += 1;
    this.acknowledged.set(saved.key, saved.body);
    return saved.key;
  }

  private said(at: number, subject: number, value: number): Omit<Said, 'payloadVersion' | 'words'> {
    const zoneId = this.place.zoneIds[subject];
    const body = zoneId
      ? { visitId: this.visitIds[at], zoneId, kind: 'leak', count: value + 1, repaired: false, word: null }
      : {
          visitId: this.visitIds[at],
          closedAt: closedAt(value),
          doneNote: `Done ${value}`,
          leftNote: null,
          workedMinutes: value,
          materials: [],
        };
    return { kind: zoneId ? 'note-zone' : 'close-visit', subject: `subject ${subject}`, body: JSON.stringify(body) };
  }

  private async poison(at: number): Promise<void> {
    const { body } = this.said(at, 0, 0);
    const said = { kind: 'note-zone', subject: `poison ${this.made}`, body: JSON.stringify({ ...JSON.parse(body), word: POISON }) };
    const key = await this.save(at, said, 0);
    if (!key) return;
    this.acknowledged.delete(key);
    this.poisoned.add(key);
  }

  private photo(at: number): Omit<Said, 'payloadVersion' | 'words'> {
    const takenAt = new Date(Date.parse(ARRIVED) + this.made * 1000).toISOString();
    return { kind: 'photo', subject: 'photo', body: JSON.stringify({ visitId: this.visitIds[at], kind: 'other', takenAt }) };
  }

  private async edit(zone: number, value: number): Promise<void> {
    await this.office.ask('mutation($input: ZoneNoteInput!) { noteZone(input: $input) { id } }', {
      input: { visitId: this.visitIds[0], zoneId: this.place.zoneIds[zone], kind: 'leak', count: value + 1 },
    });
  }

  private async fill(at: number, isFull: boolean): Promise<void> {
    const origin = new URL(this.product.url).origin;
    await this.devices[at]!.quota.send('Storage.overrideQuotaForOrigin', { origin, ...(isFull && { quotaSize: SMALLEST_QUOTA }) });
  }

  private storeOf = (at: number): string => `${this.name} ${at}`;

  private async open(at: number): Promise<void> {
    const { page } = this.devices[at]!.person;
    await page.goto('/harness', { waitUntil: 'commit' });
    await page.evaluate(([name, skew]) => harness.open(name, skew), [this.storeOf(at), this.skewOf(at)] as const);
  }

  private skewOf = (at: number): number => this.elapsedMs + (this.skews[at] ?? 0);

  private async setClocks(): Promise<void> {
    for (const [at, { person }] of this.devices.entries()) await person.page.evaluate((skew) => harness.setClock(skew), this.skewOf(at));
  }

  private async isWaiting(at: number): Promise<boolean> {
    const all = await this.devices[at]!.person.page.evaluate(() => harness.operations());
    return all.some(({ state, picture }) => state === 'queued' || state === 'sending' || picture === 'here');
  }
}

const closedAt = (value: number): string => new Date(Date.parse(ARRIVED) + (value + 1) * MINUTE_MS).toISOString();
