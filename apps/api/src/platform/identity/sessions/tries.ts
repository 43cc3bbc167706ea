import { Injectable } from '@nestjs/common';
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';

/** Slows down guessing: per address and person, and per address over all persons. */
@Injectable()
export class Tries {
  private readonly perPerson = new RateLimiterMemory({ points: 10, duration: 15 * 60 });
  private readonly perAddress = new RateLimiterMemory({ points: 100, duration: 15 * 60 });

  /** Counts a try; returns the seconds to wait when there were too many, else null. */
  async count(address: string, person: string): Promise<number | null> {
    try {
      await this.perAddress.consume(address);
      await this.perPerson.consume(`${address} ${person}`);
      return null;
    } catch (full) {
      if (full instanceof RateLimiterRes) return Math.ceil(full.msBeforeNext / 1000);
      throw full;
    }
  }

  /** A right password clears the person's count, and was no guess of the address. */
  async forgive(address: string, person: string): Promise<void> {
    await this.perAddress.reward(address);
    await this.perPerson.delete(`${address} ${person}`);
  }
}
