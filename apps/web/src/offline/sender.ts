import type { Operation, Verdict } from './operation.js';
import { nextBatch, nextPicture, waitingIn, type Waiting } from './outbox.js';
import type { Phone } from './phone.js';

interface Problem {
  readonly code: string;
  readonly message: string;
}

/** What came of sending operations. */
export type Delivered =
  | { readonly kind: 'answered'; readonly verdicts: readonly (Verdict & { readonly key: string })[] }
  | { readonly kind: 'unanswered' }
  | { readonly kind: 'failed'; readonly problem: Problem }
  | { readonly kind: 'too large' };

/** What came of sending a picture. */
export type DeliveredPicture =
  | { readonly kind: 'kept' }
  | { readonly kind: 'unanswered' }
  | { readonly kind: 'refused'; readonly problem: Problem };

/** Carries things to the server; it knows how, the sender knows when. */
export interface Post {
  readonly operations: (deviceId: string, batch: readonly Operation[], waiting: Waiting) => Promise<Delivered>;
  readonly picture: (operation: Operation, bytes: ArrayBuffer) => Promise<DeliveredPicture>;
}

/** More rounds than this on end would keep a phone busy with itself. */
const MOST_ROUNDS = 200;

/** Sends what waits: text first, in the order in which it was saved, then pictures one by one. One run at a time; asked meanwhile, it runs once more. */
export class Sender {
  private running: Promise<void> | null = null;
  private isAskedAgain = false;
  private heardAt = 0;

  constructor(
    private readonly phone: Phone,
    private readonly post: Post,
    private readonly now: () => Date,
  ) {}

  run(): Promise<void> {
    if (this.running) {
      this.isAskedAgain = true;
      return this.running;
    }
    this.running = this.rounds().finally(() => {
      this.running = null;
      if (!this.isAskedAgain) return;
      this.isAskedAgain = false;
      void this.run();
    });
    return this.running;
  }

  private async rounds(): Promise<void> {
    if (this.phone.isOldPage) return;
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      if (this.phone.isShut) return;
      const goesOn = nextBatch(this.phone.outbox).length > 0 ? await this.text() : await this.picture();
      if (!goesOn) break;
    }
    await this.greet();
  }

  private async text(): Promise<boolean> {
    const batch = nextBatch(this.phone.outbox);
    const keys = batch.map(({ key }) => key);
    await this.phone.happen({ type: 'sending', keys });
    const delivered = await this.post.operations(this.phone.deviceId, batch, waitingIn(this.phone.outbox));
    switch (delivered.kind) {
      case 'answered':
        await this.phone.happen({ type: 'answered', verdicts: delivered.verdicts, at: this.now().toISOString() });
        // What the answer did not speak of waits for the next.
        await this.phone.happen({ type: 'unanswered', keys });
        this.heardAt = Date.now();
        return delivered.verdicts.length > 0;
      case 'unanswered':
        await this.phone.happen({ type: 'unanswered', keys });
        return false;
      case 'failed':
        await this.phone.happen({ type: 'failed', keys, problem: delivered.problem });
        // The one on which the server breaks is looked for at once; alone it is tried again later.
        return keys.length > 1 || this.phone.outbox.operations.some(({ key, state }) => key === keys[0] && state === 'refused');
      case 'too large':
        await this.phone.happen({ type: 'too large', keys });
        return true;
    }
  }

  private async picture(): Promise<boolean> {
    const photo = nextPicture(this.phone.outbox);
    const bytes = photo && (await this.phone.picture(photo.key));
    if (!photo) return false;
    if (!bytes) {
      const problem = { code: 'PICTURE_LOST', message: 'The picture is not on this phone any more.' };
      await this.phone.happen({ type: 'picture refused', key: photo.key, problem });
      return true;
    }
    const delivered = await this.post.picture(photo, bytes);
    this.heardAt = 0;
    if (delivered.kind === 'kept') await this.phone.happen({ type: 'picture sent', key: photo.key });
    if (delivered.kind === 'refused') await this.phone.happen({ type: 'picture refused', key: photo.key, problem: delivered.problem });
    return delivered.kind !== 'unanswered';
  }

  /** Tells the office what is still here, when nothing was sent for a while or a picture went. */
  private async greet(): Promise<void> {
    if (Date.now() - this.heardAt < QUIET_MS || nextBatch(this.phone.outbox).length > 0) return;
    const { kind } = await this.post.operations(this.phone.deviceId, [], waitingIn(this.phone.outbox));
    if (kind === 'answered') this.heardAt = Date.now();
  }
}

const QUIET_MS = 5 * 60_000;
