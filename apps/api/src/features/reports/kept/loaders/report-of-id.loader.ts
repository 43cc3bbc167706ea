import { defineLoader } from '../../../../platform/graphql/loader.js';
import type { WaterReportRow } from '../water-report.entity.js';
import { waterReports } from '../water-report.repository.js';

/** The report of an id; null where it is gone, or not for the actor. */
export const reportOfId = defineLoader<string, WaterReportRow | null>(
  async (tx, ids) => new Map((await waterReports.some(tx, ids)).map((row) => [row.id, row])),
  null,
);
