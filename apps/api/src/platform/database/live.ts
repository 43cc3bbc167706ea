import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { DataSource, type QueryRunner } from 'typeorm';
import type { OrganizationTransaction } from './organization-transaction.js';
import { log } from '../problems/log.js';

const CHANNEL = 'rillbook_live';
/** How long a listener that lost the database waits before it asks again. [ms] */
const AGAIN_MS = 2000;

type Heard = () => void;

/** What of the driver's connection is used. */
interface Connection {
  on(event: 'notification', hear: (message: { readonly payload?: string }) => void): void;
  on(event: 'error' | 'end', fail: (problem?: Error) => void): void;
}

/**
 * Tells open pages that something of their organization has changed, whichever process did it: through the database, and only once the
 * change is kept. It says that, never what: the page asks, as the person who looks at it.
 */
@Injectable()
export class Live implements OnApplicationShutdown {
  private readonly listeners = new Map<string, Set<Heard>>();
  private listening: Promise<QueryRunner> | null = null;
  private isEnding = false;

  constructor(private readonly source: DataSource) {}

  /** Heard after the transaction is kept, once however often it is told within it. */
  async tell(tx: OrganizationTransaction, topic: string): Promise<void> {
    await tx.query('select pg_notify($1, $2)', [CHANNEL, `${tx.organizationId} ${topic}`]);
  }

  /** Hears of a topic from now on; the answer ends that. */
  async hear(organizationId: string, topic: string, heard: Heard): Promise<() => void> {
    const name = `${organizationId} ${topic}`;
    const set = this.listeners.get(name) ?? new Set();
    this.listeners.set(name, set.add(heard));
    this.listening ??= this.listen();
    await this.listening;
    return () => {
      set.delete(heard);
      if (set.size === 0) this.listeners.delete(name);
    };
  }

  async onApplicationShutdown(): Promise<void> {
    this.isEnding = true;
    const runner = await this.listening;
    this.listening = null;
    await runner?.release();
  }

  private async listen(): Promise<QueryRunner> {
    const runner = this.source.createQueryRunner();
    try {
      const connection = (await runner.connect()) as Connection;
      connection.on('notification', ({ payload }) => {
        for (const heard of this.listeners.get(payload ?? '') ?? []) heard();
      });
      connection.on('error', (problem) => this.lost(problem));
      connection.on('end', () => this.lost());
      await runner.query(`listen ${CHANNEL}`);
      return runner;
    } catch (problem) {
      this.listening = null;
      await runner.release();
      throw problem;
    }
  }

  /** The connection is gone: another one listens, and everybody looks, for something may have been missed. */
  private lost(problem?: Error): void {
    if (this.isEnding || !this.listening) return;
    log.warn({ err: problem }, 'live connection lost');
    this.listening = null;
    const again = (): void => {
      if (this.isEnding || this.listening) return;
      this.listening = this.listen();
      this.listening.then(
        () => {
          for (const set of this.listeners.values()) for (const heard of set) heard();
        },
        () => setTimeout(again, AGAIN_MS).unref(),
      );
    };
    setTimeout(again, AGAIN_MS).unref();
  }
}
