import type { APIResponse, BrowserContext, Route } from 'playwright-core';

/** What happens to the next delivery; whatever comes after it finds no signal. */
export type Fault =
  | 'good'
  | 'cut before'
  | 'cut after'
  | 'twice'
  | 'reordered'
  | 'server breaks'
  | 'too large'
  | 'half answered'
  | 'hangs'
  | 'killed';

interface Sent {
  readonly url: string;
  readonly headers: Record<string, string>;
  readonly body: string;
}

/** A record with this in it breaks the server, and so does everything that comes with it. */
export const POISON = 'breaks the server';

const isFieldwork = (body: string | null): body is string => body !== null && body.includes('SendFieldwork');

/** The line between one phone and the server: each delivery goes through it, and a copy of each is kept for those that come late. */
export class Line {
  deliveries = 0;
  private fault: Fault = 'good';
  private isDead = false;
  private readonly copies: Sent[] = [];

  constructor(
    private readonly context: BrowserContext,
    private readonly kill: () => Promise<void>,
  ) {}

  async lay(): Promise<void> {
    await this.context.route('**/graphql', (route) => this.carry(route, isFieldwork(route.request().postData())));
    await this.context.route('**/api/photos/*', (route) => this.carry(route, true));
  }

  /** From now on: one delivery with this fault, then none; good has no end. */
  set(fault: Fault): void {
    this.fault = fault;
    this.isDead = false;
  }

  /** A delivery that was held up somewhere comes when nobody waits for it any more. */
  async deliverLate(nth: number): Promise<void> {
    const copy = this.copies[nth % Math.max(1, this.copies.length)];
    if (copy) await this.context.request.fetch(copy.url, { method: 'POST', headers: copy.headers, data: copy.body, maxRetries: 2 });
  }

  private async carry(route: Route, isDelivery: boolean): Promise<void> {
    if (!isDelivery) return route.continue();
    if (this.isDead) return route.abort('connectionfailed');
    const { fault } = this;
    if (fault !== 'good') this.isDead = true;
    this.deliveries += 1;
    if (isPoisoned(route)) return route.fulfill(BREAKS);
    switch (fault) {
      case 'cut before':
        return route.abort('connectionreset');
      case 'server breaks':
        return route.fulfill(BREAKS);
      case 'too large':
        return route.fulfill({ status: 413, contentType: 'text/plain', body: 'too large' });
      case 'killed': {
        const answered = reach(route);
        await this.kill();
        await answered;
        return route.abort('connectionreset');
      }
      default:
        return route.request().method() === 'POST' ? this.text(route, fault) : this.picture(route, fault);
    }
  }

  private async text(route: Route, fault: Fault): Promise<void> {
    const request = route.request();
    const body = fault === 'reordered' ? reordered(request.postData() ?? '') : (request.postData() ?? '');
    this.copies.push({ url: request.url(), headers: await request.allHeaders(), body });
    if (fault === 'twice') await reach(route, { postData: body });
    const response = await reach(route, { postData: body });
    if (!response) return route.abort('connectionreset');
    // Nobody answers, and nobody says so.
    if (fault === 'hangs') return;
    if (fault === 'cut after') return route.abort('connectionreset');
    if (fault !== 'half answered') return route.fulfill({ response });
    const answer = (await response.json()) as { data: { sendFieldwork: unknown[] } };
    const { sendFieldwork } = answer.data;
    const heard = sendFieldwork.slice(0, Math.floor(sendFieldwork.length / 2));
    return route.fulfill({ response, json: { ...answer, data: { sendFieldwork: heard } } });
  }

  private async picture(route: Route, fault: Fault): Promise<void> {
    if (fault === 'twice') await reach(route);
    const response = await reach(route);
    if (!response) return route.abort('connectionreset');
    if (fault === 'hangs') return;
    return fault === 'cut after' ? route.abort('connectionreset') : route.fulfill({ response });
  }
}

/** What the server answers; null where it dies meanwhile, for then there is no line. */
async function reach(route: Route, options: Parameters<Route['fetch']>[0] = {}): Promise<APIResponse | null> {
  try {
    return await route.fetch(options);
  } catch (problem) {
    if (!/ECONNRESET|ECONNREFUSED|EPIPE|socket hang up/.test(String(problem))) throw problem;
    return null;
  }
}

const BROKEN = JSON.stringify({ data: null, errors: [{ message: 'The server broke.', extensions: { code: 'UNFORESEEN' } }] });
const BREAKS = { status: 200, contentType: 'application/json', body: BROKEN };

const isPoisoned = (route: Route): boolean => route.request().method() === 'POST' && (route.request().postData() ?? '').includes(POISON);

function reordered(body: string): string {
  const sent = JSON.parse(body) as { variables: { operations: unknown[] } };
  return JSON.stringify({ ...sent, variables: { ...sent.variables, operations: sent.variables.operations.toReversed() } });
}
