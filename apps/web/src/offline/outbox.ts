import { KEPT_DAYS, MOST_TRIES, type Operation, type Said, type Verdict } from './operation.js';

/** Everything that was saved on this phone, in the order in which it was saved, and what is being written. */
export interface Outbox {
  readonly operations: readonly Operation[];
  /** what was typed and not saved, by the name of its form */
  readonly drafts: Readonly<Record<string, unknown>>;
  /** when each was last typed in; ISO 8601 */
  readonly typedAt: Readonly<Record<string, string>>;
  readonly nextSeq: number;
  /** how many are sent at once: halved when the server finds them too many */
  readonly batch: number;
  /** how many are sent at once while the one is looked for on which the server breaks: halved when it breaks, doubled when it answers */
  readonly narrowed: number;
  readonly lastSentAt: string | null;
}

/** What can happen to the outbox. */
export type Event =
  | { readonly type: 'typed'; readonly draft: string; readonly value: unknown; readonly at: string }
  | { readonly type: 'cleared'; readonly draft: string }
  | { readonly type: 'saved'; readonly key: string; readonly at: string; readonly said: Said; readonly draft?: string | undefined }
  | { readonly type: 'withdrawn'; readonly subject: string }
  | { readonly type: 'sending'; readonly keys: readonly string[] }
  | { readonly type: 'answered'; readonly verdicts: readonly (Verdict & { readonly key: string })[]; readonly at: string }
  | { readonly type: 'unanswered'; readonly keys: readonly string[] }
  | { readonly type: 'failed'; readonly keys: readonly string[]; readonly problem: { readonly code: string; readonly message: string } }
  | { readonly type: 'too large'; readonly keys: readonly string[] }
  | { readonly type: 'asked again'; readonly keys: readonly string[] }
  | { readonly type: 'picture sent'; readonly key: string }
  | { readonly type: 'picture refused'; readonly key: string; readonly problem: { readonly code: string; readonly message: string } }
  | { readonly type: 'set aside'; readonly key: string; readonly why: string; readonly at: string }
  | { readonly type: 'restarted'; readonly at: string };

export const MOST_AT_ONCE = 64;

export const EMPTY: Outbox = {
  operations: [],
  drafts: {},
  typedAt: {},
  nextSeq: 1,
  batch: MOST_AT_ONCE,
  narrowed: MOST_AT_ONCE,
  lastSentAt: null,
};

const DAY_MS = 86_400_000;

/** The outbox after something happened. Nothing that the server does not have ever leaves it. */
export function afterEvent(outbox: Outbox, event: Event): Outbox {
  switch (event.type) {
    case 'typed':
      return {
        ...outbox,
        drafts: { ...outbox.drafts, [event.draft]: event.value },
        typedAt: { ...outbox.typedAt, [event.draft]: event.at },
      };
    case 'cleared':
      return undrafted(outbox, event.draft);
    case 'saved':
      return saved(outbox, event);
    case 'withdrawn':
      // What has left cannot be taken back, only said anew.
      return { ...outbox, operations: outbox.operations.filter((one) => one.subject !== event.subject || one.hasLeft) };
    case 'restarted':
      return swept(
        changed(outbox, isOnItsWay, (one) => ({ ...one, state: 'queued' })),
        event.at,
      );
    case 'answered':
      return answered(outbox, event.verdicts, event.at);
    case 'set aside':
      return changed(
        outbox,
        (one) => one.key === event.key && (isRefused(one) || isDisputed(one)),
        (one) => ({ ...one, setAside: { why: event.why, at: event.at } }),
      );
    case 'picture sent':
      return changed(outbox, named([event.key]), (one) => ({ ...one, picture: 'sent' }));
    case 'picture refused':
      return changed(outbox, named([event.key]), (one) => ({
        ...one,
        picture: 'refused',
        told: { verdict: 'refused', problem: event.problem, other: null },
      }));
    default:
      return afterSending(outbox, event);
  }
}

type OfSending = Extract<Event, { type: 'sending' | 'unanswered' | 'failed' | 'too large' | 'asked again' }>;

function afterSending(outbox: Outbox, event: OfSending): Outbox {
  const these = named(event.keys);
  const sending = (one: Operation): boolean => these(one) && isOnItsWay(one);
  switch (event.type) {
    case 'sending':
      return changed(
        outbox,
        (one) => these(one) && one.state === 'queued',
        (one) => ({ ...one, state: 'sending', hasLeft: true }),
      );
    case 'unanswered':
      // Nobody answered: that says nothing of the operation, so it is no try.
      return changed(outbox, sending, (one) => ({ ...one, state: 'queued' }));
    case 'failed':
      return failed(outbox, event, sending);
    case 'too large':
      return tooLarge(outbox, event.keys.length, sending);
    case 'asked again':
      return changed(
        outbox,
        (one) => these(one) && !isOnItsWay(one),
        (one) => ({
          ...one,
          state: 'queued',
          setAside: undefined,
          tries: 0,
          picture: one.picture === 'refused' ? 'here' : one.picture,
        }),
      );
  }
}

/** Whether the server said no to it, or to its picture. */
export const isRefused = ({ state, picture }: Operation): boolean => state === 'refused' || picture === 'refused';

/** Whether the server has it, and has another word of the same from somebody else. */
export const isDisputed = ({ state, told }: Operation): boolean => state === 'sent' && told?.verdict === 'conflict';

/** What somebody else said otherwise, and the person has neither seen nor said anew. */
export const disputedIn = (outbox: Outbox): readonly Operation[] =>
  outbox.operations.filter((one) => isDisputed(one) && !isOver(outbox, one));

/** Whether all other words are of the same person: said on another phone of theirs, or earlier on this one. */
export const areOwn = (disputed: readonly Operation[]): boolean =>
  disputed.every(({ told }) => (told?.other as { readonly isSelf?: unknown } | null | undefined)?.isSelf === true);

/** Whether what was refused or disputed is over: set aside, or said anew since. Of photos each is its own. */
export const isOver = ({ operations }: Outbox, one: Operation): boolean =>
  one.setAside !== undefined ||
  (one.picture === 'none' && operations.some(({ subject, seq, state }) => subject === one.subject && seq > one.seq && state !== 'refused'));

/**
 * What something is said over, by which the server tells a correction from a word that knew nothing of another: what the phone showed. What was
 * saved here and never left is replaced, so it is said over what that was said over. Null where nothing was shown.
 */
export function saidOver<Shown>({ operations }: Outbox, subject: string, shown: Shown | null): Shown | null {
  const replaced = operations.find((one) => one.subject === subject && !one.hasLeft);
  return replaced ? ((JSON.parse(replaced.body) as { over?: Shown | null }).over ?? null) : shown;
}

const isOnItsWay = (one: Operation): boolean => one.state === 'sending';

const named = (keys: readonly string[]): ((one: Operation) => boolean) => {
  const names = new Set(keys);
  return ({ key }) => names.has(key);
};

const changed = (outbox: Outbox, which: (one: Operation) => boolean, change: (one: Operation) => Operation): Outbox => ({
  ...outbox,
  operations: outbox.operations.map((one) => (which(one) ? change(one) : one)),
});

function undrafted(outbox: Outbox, name: string): Outbox {
  const { [name]: _, ...drafts } = outbox.drafts;
  const { [name]: __, ...typedAt } = outbox.typedAt;
  return { ...outbox, drafts, typedAt };
}

/** Said again before it ever left, it takes the place of what was said; else it is another operation. */
function saved(before: Outbox, { key, at, said, draft }: Extract<Event, { type: 'saved' }>): Outbox {
  const outbox = draft === undefined ? before : undrafted(before, draft);
  if (outbox.operations.some((one) => one.key === key)) return outbox;
  const { hasPicture = false, ...content } = said;
  const present = outbox.operations.find(({ subject, hasLeft, picture }) => subject === said.subject && !hasLeft && picture === 'none');
  if (present && !hasPicture)
    return changed(
      outbox,
      (one) => one === present,
      (one) => ({ ...one, ...content, savedAt: at, state: 'queued' }),
    );
  const made: Operation = {
    ...content,
    key,
    seq: outbox.nextSeq,
    savedAt: at,
    state: 'queued',
    tries: 0,
    hasLeft: false,
    told: null,
    sentAt: null,
    picture: hasPicture ? 'here' : 'none',
  };
  return { ...outbox, operations: [...outbox.operations, made], nextSeq: outbox.nextSeq + 1 };
}

function answered(outbox: Outbox, verdicts: Extract<Event, { type: 'answered' }>['verdicts'], at: string): Outbox {
  const of = new Map(verdicts.map((verdict) => [verdict.key, verdict]));
  const isSent = verdicts.some(({ verdict }) => verdict !== 'refused');
  const next = changed(
    outbox,
    ({ key, state }) => of.has(key) && state !== 'sent',
    (one) => {
      const { verdict, problem, other } = of.get(one.key)!;
      const told = { verdict, problem, other };
      return verdict === 'refused' ? { ...one, state: 'refused', tries: one.tries + 1, told } : { ...one, state: 'sent', sentAt: at, told };
    },
  );
  // An answer ends the search: nothing of what was sent broke the server.
  const narrowed = Math.min(MOST_AT_ONCE, outbox.narrowed * 2);
  return { ...next, narrowed, lastSentAt: isSent ? at : outbox.lastSentAt };
}

/** The server broke on them: on fewer at once, until the one on which it breaks is alone. The others are no worse for its company. */
function failed(outbox: Outbox, { keys, problem }: Extract<Event, { type: 'failed' }>, which: (one: Operation) => boolean): Outbox {
  if (keys.length > 1) return { ...changed(outbox, which, (one) => ({ ...one, state: 'queued' })), narrowed: Math.floor(keys.length / 2) };
  return changed(outbox, which, (one) => afterTry(one, problem));
}

/** The server broke, and said so: a few tries, then the person is told. */
function afterTry(one: Operation, problem: { readonly code: string; readonly message: string }): Operation {
  const tries = one.tries + 1;
  return { ...one, tries, state: tries < MOST_TRIES ? 'queued' : 'refused', told: { verdict: 'failed', problem, other: null } };
}

const TOO_LARGE = { code: 'TOO_LARGE', message: 'The server does not take this: it is too large.' };

/** Fewer at once; one that is too large alone is the person's to see. */
function tooLarge(outbox: Outbox, count: number, which: (one: Operation) => boolean): Outbox {
  if (count > 1) return { ...changed(outbox, which, (one) => ({ ...one, state: 'queued' })), batch: Math.max(1, Math.floor(count / 2)) };
  return changed(outbox, which, (one) => ({ ...one, state: 'refused', told: { verdict: 'refused', problem: TOO_LARGE, other: null } }));
}

/** What the server has had for long enough is forgotten; its picture too must be there. */
function swept(outbox: Outbox, at: string): Outbox {
  const before = Date.parse(at) - KEPT_DAYS * DAY_MS;
  const isForgotten = ({ state, sentAt, picture }: Operation): boolean =>
    state === 'sent' && picture !== 'here' && picture !== 'refused' && sentAt !== null && Date.parse(sentAt) < before;
  return { ...outbox, operations: outbox.operations.filter((one) => !isForgotten(one)) };
}

/** What is sent next: the oldest that wait, as many as the server takes at once. */
export const nextBatch = ({ operations, batch, narrowed }: Outbox): readonly Operation[] =>
  operations.filter(({ state }) => state === 'queued').slice(0, Math.min(batch, narrowed));

/** The next picture: text goes first, and a photo is told of before its picture goes. */
export const nextPicture = ({ operations }: Outbox): Operation | null =>
  operations.find(({ picture, state }) => picture === 'here' && state === 'sent') ?? null;

/** What is still on this phone, counted from the outbox itself. */
export interface Waiting {
  readonly waiting: number;
  readonly photos: number;
  readonly refused: number;
  readonly underWay: number;
  readonly oldestAt: string | null;
}

export function waitingIn(outbox: Outbox): Waiting {
  const { operations } = outbox;
  const count = (which: (one: Operation) => boolean): number => operations.filter(which).length;
  const unsent = operations.filter(({ state }) => state !== 'sent');
  return {
    waiting: count(({ state }) => state === 'queued' || state === 'sending'),
    photos: count(({ picture }) => picture === 'here'),
    refused: count((one) => isRefused(one) && !isOver(outbox, one)),
    underWay: count(isOnItsWay),
    oldestAt: unsent[0]?.savedAt ?? null,
  };
}

/** Nobody goes on with a form that was left so long ago: it stays, and holds up nothing. */
const LEFT_AFTER_MS = 2 * DAY_MS;

/** Whether a form is half written; one that was left days ago is not. */
export const isWriting = ({ drafts, typedAt }: Outbox, at: Date): boolean =>
  Object.keys(drafts).some((name) => at.getTime() - Date.parse(typedAt[name] ?? '1970-01-01T00:00:00Z') < LEFT_AFTER_MS);
