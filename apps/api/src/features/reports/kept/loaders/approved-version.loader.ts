import { defineLoader } from '../../../../platform/graphql/loader.js';
import { waterReports } from '../water-report.repository.js';

/** The data version with which a report was approved; null where nothing was. */
export const approvedVersionOfReport = defineLoader<string, string | null>(
  (tx, reportIds) => waterReports.approvedVersions(tx, reportIds),
  null,
);
