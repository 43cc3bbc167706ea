import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { paths } from '../../../page/paths.js';
import type { Named } from './month-steps.js';

const MOST_NAMES = 4;

/** A few properties by name, each the way to its page, and how many more. */
export function NameList({ properties, month }: { readonly properties: readonly Named[]; readonly month: string }) {
  const intl = useIntl();
  const shown = properties.slice(0, MOST_NAMES).map(({ id, name }) => (
    <Link key={id} to={paths.property(id, month)}>
      {name}
    </Link>
  ));
  const rest = properties.length - shown.length;
  const parts = rest > 0 ? [...shown, <FormattedMessage key="more" id="overview.step.more" values={{ count: rest }} />] : shown;
  return <>{intl.formatList(parts, { type: 'conjunction' })}</>;
}
