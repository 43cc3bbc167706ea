import { Inject, Injectable, type NestMiddleware } from '@nestjs/common';
import type { NextFunction, Response } from 'express';
import { DataSource } from 'typeorm';
import { RequestScope, type ScopedRequest } from '../request-scope.js';
import { tokenOf } from '../sessions/cookie.js';
import { Sessions } from '../sessions/sessions.js';

/** A page names the member whom it shows as here. */
const MEMBER = 'x-rillbook-member';

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
      // Somebody else signed in beside a page that was left open: it may not act in their name, nor show theirs under its own.
      const named = request.headers[MEMBER];
      const isOther = named !== undefined && named !== actor?.memberId;
      request.scope = new RequestScope(request, response, isOther ? null : actor, this.source);
      next();
    } catch (problem) {
      next(problem);
    }
  }
}
