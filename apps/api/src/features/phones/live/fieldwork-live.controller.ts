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

/** The office's open pages hear that something happened in the field; what it was they ask for themselves. */
@Controller('api/live')
export class FieldworkLiveController implements OnModuleDestroy {
  private readonly open = new Set<Response>();

  constructor(private readonly live: Live) {}

  @Allow(Permission.AssignWork)
  @Get('fieldwork')
  async hear(@Scope() scope: RequestScope, @Res() response: Response): Promise<void> {
    const { organizationId } = scope.actor!;
    // Nothing of the database waits while the page listens.
    await scope.become(scope.actor);
    const stop = await this.live.hear(organizationId, FIELDWORK, () => response.write('data: changed\n\n'));
    response.writeHead(200, { 'Content-Type': 'text/event-stream', 'Cache-Control': 'no-cache, no-transform', 'X-Accel-Buffering': 'no' });
    response.write('retry: 3000\n\n');
    const stillHere = setInterval(() => response.write(': still here\n\n'), STILL_HERE_MS);
    const longest = setTimeout(() => response.end(), LONGEST_MS);
    this.open.add(response);
    await new Promise<void>((closed) => response.once('close', closed));
    this.open.delete(response);
    clearInterval(stillHere);
    clearTimeout(longest);
    stop();
  }

  /** A server that ends waits for no page. */
  onModuleDestroy(): void {
    for (const response of this.open) response.end();
  }
}
