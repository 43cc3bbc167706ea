import { defineLoader, grouped } from '../../../platform/graphql/loader.js';
import { shareLinks, UNUSED } from './share-link.repository.js';
import { type ShareLink, showLink } from './share-link.type.js';

/** The links of a report, the newest first, with how often each was opened. */
export const linksOfReport = defineLoader<string, readonly ShareLink[]>(async (tx, reportIds) => {
  const links = await shareLinks.ofReports(tx, reportIds);
  const use = await shareLinks.use(
    tx,
    links.map(({ id }) => id),
  );
  const shown = links.map((link) => ({ reportId: link.reportId, link: showLink(link, use.get(link.id) ?? UNUSED) }));
  return new Map([...grouped(shown, ({ reportId }) => reportId)].map(([id, list]) => [id, list.map(({ link }) => link)]));
}, []);
