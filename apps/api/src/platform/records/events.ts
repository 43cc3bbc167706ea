import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../database/organization-transaction.js';

type Class<E> = abstract new (...args: never[]) => E;
type Handler<E> = (tx: OrganizationTransaction, event: E) => Promise<void>;

/** Facts that happened, told to the features above in the same transaction: if a handler fails, nothing happened. */
@Injectable()
export class Events {
  private readonly handlers = new Map<unknown, Handler<never>[]>();

  /** Has a handler told of each event of a class. */
  on<E>(event: Class<E>, handler: Handler<E>): void {
    this.handlers.set(event, [...(this.handlers.get(event) ?? []), handler as Handler<never>]);
  }

  /** Tells all handlers, one after the other, in the order in which they were named. */
  async emit<E extends object>(tx: OrganizationTransaction, event: E): Promise<void> {
    for (const handler of this.handlers.get(event.constructor) ?? []) await (handler as unknown as Handler<E>)(tx, event);
  }
}
