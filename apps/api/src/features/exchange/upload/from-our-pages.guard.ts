import { type CanActivate, type ExecutionContext, Injectable } from '@nestjs/common';
import type { Request } from 'express';
import { exchangeProblems } from '../import/directory/exchange.problems.js';

/** A header that no page of another site can send without being asked for it first. */
const HEADER = 'x-rillbook-request';

/** Refuses what changes something unless a page of Rillbook itself asks for it: a form of another site cannot set the header. */
@Injectable()
export class FromOurPages implements CanActivate {
  canActivate(context: ExecutionContext): boolean {
    const request = context.switchToHttp().getRequest<Request>();
    if (request.method !== 'GET' && request.headers[HEADER] !== '1') throw exchangeProblems.notFromOurPages({});
    return true;
  }
}
