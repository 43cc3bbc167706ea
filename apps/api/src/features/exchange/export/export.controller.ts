import { Controller, Get, Res } from '@nestjs/common';
import type { Response } from 'express';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import type { RequestScope } from '../../../platform/identity/request-scope.js';
import { Scope } from '../../../platform/identity/tx.js';
import { log } from '../../../platform/problems/log.js';
import { ExportDeed } from './export-deed.service.js';
import { ZipSink } from './zip-sink.js';

/** The organization's files, to be taken away. */
@Controller('api/export')
export class ExportController {
  constructor(private readonly deed: ExportDeed) {}

  /** One archive of everything that can be imported again, and of accounts and findings. */
  @Allow(Permission.Exchange)
  @Get()
  async all(@Scope() scope: RequestScope, @Res() response: Response): Promise<void> {
    const actor = scope.actor!;
    // The export has its own transaction: the archive may be taken slowly.
    await scope.become(actor);
    const sink = new ZipSink(response);
    try {
      await this.deed.run(actor, async (file) => {
        if (!response.headersSent) begin(response);
        await sink.take(file);
      });
      await sink.end();
    } catch (problem) {
      if (!response.headersSent) throw problem;
      // Half an archive must not look like a whole one.
      log.warn({ err: problem }, 'an export broke off');
      response.destroy();
    }
  }
}

function begin(response: Response): void {
  response.setHeader('Content-Type', 'application/zip');
  response.setHeader('Content-Disposition', 'attachment; filename="rillbook-export.zip"');
  response.setHeader('Cache-Control', 'no-store');
}
