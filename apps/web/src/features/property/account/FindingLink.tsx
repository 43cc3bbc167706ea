import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import type { FindingsOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useSays } from '../../../says/use-says.js';

type Finding = FindingsOfPropertyFragment['findings'][number];

/** The way to a finding, and who is on it. */
export function FindingLink({ finding: { id, kind, workOrders } }: { readonly finding: Finding }) {
  const { day } = useFormats();
  const { word } = useSays();
  const given = workOrders.find((order) => order.crew && order.day);
  return (
    <span className="xs line">
      <Link to={paths.finding(id)}>{sentenceCase(word('kind', kind))}</Link>{' '}
      {given?.crew && (
        <span className="soft nw">
          <FormattedMessage id="property.findings.crew" values={{ crew: given.crew.name, day: day(given.day) }} />
        </span>
      )}
    </span>
  );
}
