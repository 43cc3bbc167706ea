import { Injectable } from '@nestjs/common';
import type { OrganizationTransaction } from '../../../../platform/database/organization-transaction.js';
import { organizations } from '../../../../platform/identity/organizations/organization.repository.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { VersionConflict } from '../../../../platform/records/kept-records.js';
import { AcceptFinding } from '../../../fieldwork/order-deeds/from-finding/accept-finding.service.js';
import { ApproveAsClient } from '../../../fieldwork/order-deeds/approval/approve-as-client.service.js';
import { reportsProblems } from '../../reports.problems.js';
import { type RecommendationLine, recommendations } from './recommendation.repository.js';
import { whatOfOrder } from './words-of-order.js';

/** The client says yes: work that waited is open; of a finding a work order is made, which waits for an offer where no price is known. */
@Injectable()
export class ApproveRecommended {
  constructor(
    private readonly approve: ApproveAsClient,
    private readonly accept: AcceptFinding,
  ) {}

  /** `seen` is the version that the client looked at, so that nobody agrees to a price that was changed meanwhile; null where it is not told */
  async run(tx: OrganizationTransaction, id: string, seen: number | null): Promise<RecommendationLine[]> {
    const { clientId } = tx.actor;
    if (clientId === null) throw platformProblems.notAllowed({ permission: 'approve what is recommended: for clients' });
    const line = (await recommendations.ofClient(tx, clientId)).find((each) => each.id === id);
    if (!line) throw platformProblems.notFound({ thing: 'recommendation', id });
    if (seen !== null && seen !== line.version) throw reportsProblems.offerChanged({ id });
    if (line.from === 'work order' && line.cost === null) throw reportsProblems.noOfferYet({ workOrderId: id });
    const outcome = line.from === 'work order' ? await this.approve.run(tx, id, line.version) : await this.makeOrder(tx, line);
    if (outcome instanceof VersionConflict) throw reportsProblems.offerChanged({ id });
    return recommendations.ofClient(tx, clientId);
  }

  private async makeOrder(tx: OrganizationTransaction, line: RecommendationLine): Promise<unknown> {
    const { id, version, propertyId, cost } = line;
    const { language } = await organizations.own(tx);
    const what = whatOfOrder(line, language);
    return this.accept.run(
      tx,
      id,
      version,
      { propertyId, findingId: id, kind: 'upgrade', what, wordsOf: 'finding' },
      cost === null ? 'offer' : 'work',
    );
  }
}
