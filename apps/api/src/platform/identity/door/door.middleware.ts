import { Inject, Injectable, type NestMiddleware } from '@nestjs/common';
import type { NextFunction, Response } from 'express';
import { DataSource } from 'typeorm';
import { RequestScope, type ScopedRequest } from '../request-scope.js';
import { tokenOf } from '../sessions/cookie.js';
import { Sessions } from '../sessions/sessions.js';

/** Finds out who asks, once a request, before anything else. */
@Injectable()
export class Door implements NestMiddleware {
  constructor(
    private readonly sessions: Sessions,
    @Inject(DataSource) private readonly source: DataSource,
  ) {}

  async use(request: ScopedRequest, response: Response, next: NextFunction): Promise<void> {
    try {
      const token = tokenOf(request);
      const actor = token ? await this.sessions.actorOf(token) : null;
      request.scope = new RequestScope(request, response, actor, this.source);
      next();
    } catch (problem) {
      next(problem);
    }
  }
}
