import { type CallHandler, type ExecutionContext, Injectable, type NestInterceptor } from '@nestjs/common';
import { type Observable, from, lastValueFrom } from 'rxjs';
import { scopeOf } from '../tx.js';

/** HTTP: ends the request's transaction before the answer leaves. GraphQL ends its own (see graphql.module). */
@Injectable()
export class TransactionInterceptor implements NestInterceptor {
  intercept(context: ExecutionContext, next: CallHandler): Observable<unknown> {
    if (context.getType<string>() === 'graphql') return next.handle();
    const scope = scopeOf(context);
    const work = async (): Promise<unknown> => {
      try {
        const answer: unknown = await lastValueFrom(next.handle(), { defaultValue: undefined });
        await scope.end(true);
        return answer;
      } catch (problem) {
        await scope.end(false);
        throw problem;
      }
    };
    return from(work());
  }
}
