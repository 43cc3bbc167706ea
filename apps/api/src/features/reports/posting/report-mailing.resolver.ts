import { Field, ObjectType, Query, Resolver } from '@nestjs/graphql';
import { Allow } from '../../../platform/identity/allow.js';
import { Permission } from '../../../platform/identity/permission.js';
import { mailSettings } from './mail-settings.js';

/** How mails of reports leave this server. */
@ObjectType()
export class ReportMailing {
  /** by a mail server; else they are written into the outbox folder */
  @Field(() => Boolean)
  hasServer: boolean;

  /** whether mails carry the link by which a recipient wants no more: not where the server does not know its own address */
  @Field(() => Boolean)
  hasLinks: boolean;
}

/** What the office should know before it sends. */
@Resolver(() => ReportMailing)
export class ReportMailingResolver {
  @Allow(Permission.WriteReports)
  @Query(() => ReportMailing)
  reportMailing(): ReportMailing {
    const { smtpUrl, publicUrl } = mailSettings();
    return Object.assign(new ReportMailing(), { hasServer: smtpUrl !== null, hasLinks: publicUrl !== null });
  }
}
