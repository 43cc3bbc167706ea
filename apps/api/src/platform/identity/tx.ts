import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { OrganizationTransaction } from '../database/organization-transaction.js';
import type { RequestScope, ScopedRequest } from './request-scope.js';

/** The request's scope, for GraphQL and HTTP alike. */
export function scopeOf(context: ExecutionContext): RequestScope {
  const scope =
    context.getType<string>() === 'graphql'
      ? (context.getArgByIndex(2) as { scope: RequestScope }).scope
      : context.switchToHttp().getRequest<ScopedRequest>().scope;
  if (!scope) throw new TypeError('a request reached its handler without a scope');
  return scope;
}

/** Parameter: the transaction of this request. */
export const Tx = createParamDecorator((_: unknown, context: ExecutionContext): OrganizationTransaction => {
  const { transaction } = scopeOf(context);
  if (!transaction) throw new TypeError('an operation uses @Tx() without @Allow(…)');
  return transaction;
});

/** Parameter: the scope of this request, for operations that are public or set the cookie. */
export const Scope = createParamDecorator((_: unknown, context: ExecutionContext): RequestScope => scopeOf(context));
