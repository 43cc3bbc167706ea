import type { Request, Response } from 'express';
import type { DataSource } from 'typeorm';
import { OrganizationTransaction } from '../database/organization-transaction.js';
import { platformProblems } from '../problems/platform.problems.js';
import type { Actor } from '../database/actor.js';

/** One request: who asks, and the one transaction that its work shares. It is opened when first needed. */
export class RequestScope {
  private opened: Promise<OrganizationTransaction> | null = null;
  private asking: Actor | null;

  constructor(
    readonly request: Request,
    readonly response: Response,
    actor: Actor | null,
    readonly source: DataSource,
  ) {
    this.asking = actor;
  }

  /** null for a stranger */
  get actor(): Actor | null {
    return this.asking;
  }

  /** Opens the transaction, or returns the one that is open. */
  open(): Promise<OrganizationTransaction> {
    if (!this.actor) return Promise.reject(platformProblems.signInNeeded({}));
    this.opened ??= OrganizationTransaction.open(this.source, this.actor).then((tx) => {
      this.transaction = tx;
      return tx;
    });
    return this.opened;
  }

  /** the open transaction; the guard opens it before any resolver runs */
  transaction: OrganizationTransaction | null = null;

  /** From here on the request is somebody's: what was done before as somebody else is kept first. */
  async become(actor: Actor | null): Promise<void> {
    await this.end(true);
    this.opened = null;
    this.transaction = null;
    this.asking = actor;
  }

  /** One fate: everything the request did is kept, or nothing. */
  async end(good: boolean): Promise<void> {
    if (!this.opened) return;
    const tx = await this.opened;
    if (good) await tx.commit();
    else await tx.rollback();
  }
}

/** A request of express that has passed the door. */
export interface ScopedRequest extends Request {
  scope?: RequestScope;
}
