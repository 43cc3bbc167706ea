import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { FindingLineFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useMasked } from '../../../page/use-masked.js';
import { useSays } from '../../../says/use-says.js';
import type { RowProps } from '../../../ui/tables/use-list-keys.js';
import { findingAddress, type FindingsPlace } from '../urls.js';
import { isTooLittle } from './water-of-kind.js';

const findingLine = graphql(`
  fragment FindingLine on Finding {
    id
    kind
    money
    cameBack
    property {
      id
      name
    }
  }
`);

interface Props {
  readonly finding: FragmentType<FindingLineFragment>;
  readonly isChosen: boolean;
  readonly place: FindingsPlace;
  readonly keys: RowProps;
  readonly onFocus: () => void;
  readonly onOpen: () => void;
}

/** Kind, money and place of one finding. */
export function FindingLine({ finding: masked, isChosen, place, keys, onFocus, onOpen }: Props) {
  const { id, kind, money, cameBack, property } = useMasked(findingLine, masked);
  const formats = useFormats();
  const { word } = useSays();
  return (
    <li aria-current={isChosen || undefined}>
      <Link {...keys} to={findingAddress(id, place)} replace onFocus={onFocus} onClick={onOpen}>
        {sentenceCase(word('kind', kind))}
      </Link>
      <span className="num">
        {isTooLittle(kind) ? (
          <span className="xs">
            <FormattedMessage id="findings.tooLittle" />
          </span>
        ) : (
          formats.money(money)
        )}
      </span>
      <span className="soft xs">
        {property.name}
        {cameBack > 0 && (
          <>
            {' · '}
            <FormattedMessage id="findings.cameBack" values={{ count: cameBack }} />
          </>
        )}
      </span>
    </li>
  );
}
