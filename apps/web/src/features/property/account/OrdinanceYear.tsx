import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { OrdinanceYearOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import type { Names } from '../../../says/names.js';

const ordinanceYearOfProperty = graphql(`
  fragment OrdinanceYearOfProperty on Property {
    id
    ordinanceYear {
      litres
      reason
    }
  }
`);

interface Props {
  readonly property: FragmentType<OrdinanceYearOfPropertyFragment>;
  readonly names: Names;
}

/** The ordinance's figure of a usual year, beside what the month's own weather allowed. */
export function OrdinanceYear({ property: masked, names }: Props) {
  const intl = useIntl();
  const says = useSays(names);
  const { ordinanceYear: year } = useMasked(ordinanceYearOfProperty, masked);
  if (!year) return null;
  const { litres, reason } = year;
  return (
    <p className="hint">
      {typeof litres === 'number'
        ? intl.formatMessage({ id: 'property.ordinance-year' }, { litres: says.volume(litres) })
        : intl.formatMessage({ id: `property.ordinance-year.${reason === 'no-zones' ? 'no-zones' : 'normals-missing'}` })}
    </p>
  );
}
