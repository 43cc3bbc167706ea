import type { FragmentType } from '@apollo/client';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { CautionsOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { useViewer } from '../../../session/viewer.js';

const cautionsOfProperty = graphql(`
  fragment CautionsOfProperty on Property {
    id
    notes
    meters {
      id
      water
    }
    controllers {
      id
    }
    backflowAssemblies {
      id
      name
      nextTestDueOn
    }
  }
`);

/** What whoever comes here must know, where the work is. */
export function Cautions({ property: masked }: { readonly property: FragmentType<CautionsOfPropertyFragment> }) {
  const { notes, meters, controllers, backflowAssemblies } = useMasked(cautionsOfProperty, masked);
  const { dayOfYear } = useFormats();
  const { today } = useViewer().organization;
  const due = backflowAssemblies.filter(({ nextTestDueOn }) => nextTestDueOn && nextTestDueOn < today);
  const isRecycled = meters.some(({ water }) => water === 'recycled');
  if (!notes && !isRecycled && controllers.length === 0 && backflowAssemblies.length === 0) return null;
  return (
    <div className="cautions">
      <h3>
        <FormattedMessage id="property.cautions" />
      </h3>
      <ul>
        {notes && <li>{notes}</li>}
        {isRecycled && (
          <li>
            <FormattedMessage id="property.caution.recycled" />
          </li>
        )}
        {controllers.length > 0 && (
          <li>
            <FormattedMessage id="property.caution.mains" />
          </li>
        )}
        {backflowAssemblies.length > 0 && (
          <li>
            <FormattedMessage id="property.caution.backflow" />
          </li>
        )}
        {due.map(({ id, name, nextTestDueOn }) => (
          <li key={id}>
            <b>
              <FormattedMessage id="property.caution.backflowDue" values={{ name, day: dayOfYear(nextTestDueOn) }} />
            </b>
          </li>
        ))}
      </ul>
    </div>
  );
}
