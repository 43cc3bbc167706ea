import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { useSays } from '../../../says/use-says.js';
import type { PortfolioRow } from './portfolio-groups.js';

/** Crew and day of the next work here; where nobody is on it, the way to the finding that asks for it. */
export function WhoIsOnIt({ row: { whoIsOnIt, topFinding } }: { readonly row: Pick<PortfolioRow, 'whoIsOnIt' | 'topFinding'> }) {
  const { day } = useFormats();
  const { word } = useSays();
  const toFinding = topFinding ? paths.finding(topFinding.id) : null;
  if (!whoIsOnIt)
    return (
      toFinding && (
        <Link to={toFinding}>
          <FormattedMessage id="overview.onIt.nobody" />
        </Link>
      )
    );
  if (whoIsOnIt.state === 'waiting for approval') return <FormattedMessage id="overview.onIt.approval" />;
  if (whoIsOnIt.crew && whoIsOnIt.day)
    return (
      <FormattedMessage
        id="overview.onIt.crew"
        values={{
          crew: whoIsOnIt.crew.name,
          day: (
            <span className="nw" key="day">
              {day(whoIsOnIt.day)}
            </span>
          ),
        }}
      />
    );
  if (whoIsOnIt.crew) return <FormattedMessage id="overview.onIt.crewOnly" values={{ crew: whoIsOnIt.crew.name }} />;
  const work = <FormattedMessage id="overview.onIt.noDay" values={{ work: word('work', whoIsOnIt.kind) }} />;
  return toFinding ? <Link to={toFinding}>{work}</Link> : work;
}
