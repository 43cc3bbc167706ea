import { Controller, Get, type OnModuleDestroy, Res } from '@nestjs/common';
import type { Response } from 'express';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope } from '../../../platform/identity/tx.js';
import { Live } from '../../../platform/database/live.js';
import { FIELDWORK } from './tell-fieldwork.js';

/** A line that keeps the way open through what closes silent connections. [ms] */
const STILL_HERE_MS = 25_000;
/** After so long the page comes again, and shows again who it is. [ms] */
const LONGEST_MS = 600_000;

/** Pages that one person listens with: a desk, a second screen and a few forgotten tabs. */
const MOST_OF_A_PERSON = 6;

/** The office's open pages hear that something happened in the field; what it was they ask for themselves. */
@Controller('api/live')
export class FieldworkLiveController implements OnModuleDestroy {
  /** by person, the longest open first */
  private readonly open = new Map<string, Set<Response>>();

  constructor(private readonly live: Live) {}

  @Allow(Permission.AssignWork)
  @Get('fieldwork')
  async hear(@Scope() scope: RequestScope, @Res() response: Response): Promise<void> {
    const { organizationId, personId } = scope.actor!;
    // Nothing of the database waits while the page listens.
    await scope.become(scope.actor);
    const closed = new Promise<void>((done) => response.once('close', done));
    const stop = await this.live.hear(organizationId, FIELDWORK, () => void (response.headersSent && response.write('data: changed\n\n')));
    response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-cache, no-transform', 'X-Accel-Buffering': 'no' });
    response.write('retry: 3000\n\n');
    const stillHere = setInterval(() => response.write(': still here\n\n'), STILL_HERE_MS);
    const longest = setTimeout(() => response.end(), LONGEST_MS);
    const forget = this.keep(`${organizationId} ${personId}`, response);
    await closed;
    forget();
    clearInterval(stillHere);
    clearTimeout(longest);
    stop();
  }

  /** A server that ends waits for no page. */
  onModuleDestroy(): void {
    for (const pages of this.open.values()) for (const response of pages) response.end();
  }

  /** A person who opens more pages than are kept open loses the oldest: it is told, and asks now and then until somebody looks at it again. */
  private keep(person: string, response: Response): () => void {
    const pages = this.open.get(person) ?? new Set();
    this.open.set(person, pages.add(response));
    for (const oldest of [...pages].slice(0, Math.max(0, pages.size - MOST_OF_A_PERSON))) {
      pages.delete(oldest);
      oldest.end('event: enough\ndata: too many pages\n\n');
    }
    return () => {
      pages.delete(response);
      if (pages.size === 0) this.open.delete(person);
    };
  }
}
