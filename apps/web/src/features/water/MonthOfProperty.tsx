import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { MonthOfPropertyFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useMasked } from '../../page/use-masked.js';
import { useSays } from '../../says/use-says.js';

export const monthOfProperty = graphql(`
  fragment MonthOfProperty on MonthAccount {
    id
    month
    allowed {
      litres
    }
    needed {
      litres
    }
    metered {
      litres
    }
  }
`);

/** One month: what was allowed, needed and metered. */
export function MonthOfProperty({ account: masked }: { readonly account: FragmentType<MonthOfPropertyFragment> }) {
  const formats = useFormats();
  const { volume } = useSays();
  const { month, allowed, needed, metered } = useMasked(monthOfProperty, masked);
  const cell = (litres: number | null | undefined) =>
    typeof litres === 'number' ? (
      volume(litres)
    ) : (
      <span className="soft">
        <FormattedMessage id="yourWater.notKnown" />
      </span>
    );
  return (
    <tr>
      <td>{formats.month(month)}</td>
      <td className="num">{cell(allowed.litres)}</td>
      <td className="num">{cell(needed.litres)}</td>
      <td className="num">{cell(metered.litres)}</td>
    </tr>
  );
}
