import { DataSource } from 'typeorm';
import { OWNER_ROLE } from './database-url.js';
import { CreateIdentity20261124010000 } from './migrations/20261124-01-create-identity.js';
import { CreatePortfolio20261124020000 } from './migrations/20261124-02-create-portfolio.js';
import { CreateMetering20261124030000 } from './migrations/20261124-03-create-metering.js';
import { CreateFieldwork20261124040000 } from './migrations/20261124-04-create-fieldwork.js';
import { CreateJobQueue20261124050000 } from './migrations/20261124-05-create-job-queue.js';
import { AddIdentityFunctions20261124110000 } from './migrations/20261124-11-add-identity-functions.js';
import { DropWeatherQuality20261125120000 } from './migrations/20261125-12-drop-weather-quality.js';
import { PackAccounts20261125130000 } from './migrations/20261125-13-pack-accounts.js';
import { FollowFindings20261130100000 } from './migrations/20261130-10-follow-findings.js';
import { AddPlanSettings20261130200000 } from './migrations/20261130-20-add-plan-settings.js';
import { PlanMonths20261130300000 } from './migrations/20261130-30-plan-months.js';
import { CreatePhotos20261130400000 } from './migrations/20261130-40-create-photos.js';
import { CreatePhones20261130410000 } from './migrations/20261130-41-create-phones.js';
import { MakeReports20261130500000 } from './migrations/20261130-50-make-reports.js';
import { SendReports20261130510000 } from './migrations/20261130-51-send-reports.js';
import { TellSmallSites20261201100000 } from './migrations/20261201-10-tell-small-sites.js';
import { CreateZoneTests20261201300000 } from './migrations/20261201-30-create-zone-tests.js';
import { SeeOnSite20261201310000 } from './migrations/20261201-31-see-on-site.js';
import { DraftAgain20261201500000 } from './migrations/20261201-50-draft-again.js';
import { AnswerQuestions20261202510000 } from './migrations/20261202-51-answer-questions.js';
import { NoteOffers20261202500000 } from './migrations/20261202-50-note-offers.js';
import { CorrectReports20261201550000 } from './migrations/20261201-55-correct-reports.js';
import { OrderPauses20261202100000 } from './migrations/20261202-10-order-pauses.js';
import { NoteComputedProperties20261202300000 } from './migrations/20261202-30-note-computed-properties.js';
import { KeepArrivals20261202700000 } from './migrations/20261202-70-keep-arrivals.js';
import { JobOutcomes20261203400000 } from './migrations/20261203-40-job-outcomes.js';
import { OrdersNotBefore20261203500000 } from './migrations/20261203-50-orders-not-before.js';
import { FindJobs20261206710000 } from './migrations/20261206-71-find-jobs.js';
import { FillLines20261210300000 } from './migrations/20261210-30-fill-lines.js';
import { FindBatches20261210500000 } from './migrations/20261210-50-find-batches.js';
import { RememberUnknownMails20261210510000 } from './migrations/20261210-51-remember-unknown-mails.js';
import { NameLinks20261215400000 } from './migrations/20261215-40-name-links.js';
import { FindSaidBefore20261215800000 } from './migrations/20261215-80-find-said-before.js';
import { WordsOfOrders20261206700000 } from './migrations/20261206-70-words-of-orders.js';
import { WithdrawVisits20261206300000 } from './migrations/20261206-30-withdraw-visits.js';
import { WithdrawArrivals20261206600000 } from './migrations/20261206-60-withdraw-arrivals.js';

const migrations = [
  CreateIdentity20261124010000,
  CreatePortfolio20261124020000,
  CreateMetering20261124030000,
  CreateFieldwork20261124040000,
  CreateJobQueue20261124050000,
  AddIdentityFunctions20261124110000,
  DropWeatherQuality20261125120000,
  PackAccounts20261125130000,
  FollowFindings20261130100000,
  AddPlanSettings20261130200000,
  PlanMonths20261130300000,
  CreatePhotos20261130400000,
  CreatePhones20261130410000,
  MakeReports20261130500000,
  SendReports20261130510000,
  TellSmallSites20261201100000,
  CreateZoneTests20261201300000,
  SeeOnSite20261201310000,
  DraftAgain20261201500000,
  CorrectReports20261201550000,
  OrderPauses20261202100000,
  NoteComputedProperties20261202300000,
  NoteOffers20261202500000,
  AnswerQuestions20261202510000,
  KeepArrivals20261202700000,
  JobOutcomes20261203400000,
  OrdersNotBefore20261203500000,
  WithdrawVisits20261206300000,
  WithdrawArrivals20261206600000,
  WordsOfOrders20261206700000,
  FindJobs20261206710000,
  FillLines20261210300000,
  FindBatches20261210500000,
  RememberUnknownMails20261210510000,
  NameLinks20261215400000,
  FindSaidBefore20261215800000,
];

type EntityClass = abstract new (...args: never[]) => object;

/**
 * The application's connections: a login that owns nothing, every statement limited in time.
 *
 * @param entities the rows that the features keep
 */
export function appDataSource(url: string, entities: readonly EntityClass[]): DataSource {
  return new DataSource({
    type: 'postgres',
    url,
    entities: [...entities] as never[],
    synchronize: false,
    installExtensions: false,
    extra: { max: 16, statement_timeout: 60_000, idle_in_transaction_session_timeout: 120_000, application_name: 'rillbook' },
  });
}

/** The owner's connections, for migrations only: logs in as the administrator and becomes the owner of the tables. */
export function ownerDataSource(adminUrl: string): DataSource {
  return new DataSource({
    type: 'postgres',
    url: adminUrl,
    migrations,
    entities: [],
    synchronize: false,
    installExtensions: false,
    extra: { max: 2, options: `-c role=${OWNER_ROLE}` },
  });
}
