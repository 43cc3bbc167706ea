import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { UnplacedFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { paths } from '../../../../page/paths.js';
import { useDeed } from '../../../../page/use-deed.js';
import { useMaskedList } from '../../../../page/use-masked.js';
import { Section } from '../../../../ui/frame/Section.js';
import { useOrderWords } from '../../use-order-words.js';
import { MoveDialog } from './MoveDialog.js';
import { usePlanWords } from './use-plan-words.js';

export const unplacedFragment = graphql(`
  fragment Unplaced on UnplacedStop {
    id
    visitDueOn
    minutes
    property {
      id
      name
    }
    orders {
      id
      kind
      what
      waterAgainOn
    }
    reason {
      code
      details
    }
  }
`);

const placeDocument = graphql(`
  mutation PlaceItem($month: Month!, $itemId: ID!, $to: CarryInput!) {
    placeItem(month: $month, itemId: $itemId, to: $to) {
      id
      version
    }
  }
`);

interface Props {
  readonly month: string;
  readonly items: readonly FragmentType<UnplacedFragment>[];
  readonly crews: readonly { readonly id: string; readonly name: string }[];
  readonly today: string;
  readonly move: string | null;
  readonly onMove: (itemId: string) => void;
  readonly onClose: () => void;
}

const LAST = 99;

/** What has no day, and why; each can be given one by hand. */
export function UnplacedList({ month, items: masked, crews, today, move, onMove, onClose }: Props) {
  const intl = useIntl();
  const { minutes, dayInWords } = useFormats();
  const { why } = usePlanWords();
  const orderWords = useOrderWords();
  const items = useMaskedList(unplacedFragment, masked);
  const place = useDeed(placeDocument, { refetch: ['MonthPlan'] });
  if (items.length === 0) return null;
  const found = items.find(({ id }) => id === move) ?? null;
  const first = crews[0];
  const usualDay = month > today.slice(0, 7) ? `${month}-01` : today;
  return (
    <Section heading={intl.formatMessage({ id: 'monthPlan.unplaced' }, { count: items.length })}>
      <ul className="unplaced">
        {items.map(({ id, property, orders, visitDueOn, minutes: takes, reason }) => (
          <li key={id}>
            <div>
              <Link to={paths.property(property.id)}>{property.name}</Link>{' '}
              <span className="soft">
                {[
                  ...orders.map((order) => orderWords(order)),
                  ...(visitDueOn ? [intl.formatMessage({ id: 'monthPlan.due' }, { day: dayInWords(visitDueOn) })] : []),
                ].join('; ')}
                {' · '}
                {minutes(takes)}
              </span>
              <p className="why">{why(reason)}</p>
            </div>
            {first && (
              <button
                type="button"
                className="link"
                aria-label={intl.formatMessage({ id: 'monthPlan.placeOf' }, { name: property.name })}
                onClick={() => onMove(id)}
              >
                <FormattedMessage id="monthPlan.place" />
              </button>
            )}
          </li>
        ))}
      </ul>
      <MoveDialog
        name={found?.property.name ?? null}
        usual={first ? { crewId: first.id, day: usualDay, position: LAST, locked: true } : null}
        crews={crews}
        problem={place.problem}
        isBusy={place.isBusy}
        onClose={onClose}
        onSend={async (to) => {
          if (found && (await place.run({ month, itemId: found.id, to }))) onClose();
        }}
      />
    </Section>
  );
}
