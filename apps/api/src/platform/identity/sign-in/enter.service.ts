import { Injectable } from '@nestjs/common';
import type { RequestScope } from '../request-scope.js';
import { platformProblems } from '../../problems/platform.problems.js';
import { giveToken, tokenOf } from '../sessions/cookie.js';
import { Sessions } from '../sessions/sessions.js';
import type { Me } from './me.type.js';
import { ShowMe } from './show-me.service.js';

/** Lets a person whose password was verified into one of their organizations: always with a new session. */
@Injectable()
export class Enter {
  constructor(
    private readonly sessions: Sessions,
    private readonly showMe: ShowMe,
  ) {}

  /** The session that the request came with ends, so that no token outlives a change of who is signed in. */
  async run(scope: RequestScope, personId: string, organizationId: string): Promise<Me> {
    const { request, response } = scope;
    const before = tokenOf(request);
    const token = await this.sessions.open(personId, organizationId, request.headers['user-agent']);
    const actor = await this.sessions.actorOf(token);
    if (!actor) throw platformProblems.signInNeeded({});
    await scope.become(actor);
    const me = await this.showMe.run(await scope.open());
    if (before) await this.sessions.close(before);
    giveToken(request, response, token);
    return me;
  }
}
