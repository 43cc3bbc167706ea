import { FormattedMessage } from 'react-intl';
import type { Operation } from '../../../offline/operation.js';
import { useOutbox } from '../../../offline/PhoneProvider.js';
import { ButtonLink } from '../../../ui/forms/Button.js';
import { whereItBelongs } from './where-it-belongs.js';

/** The way to where a thing was said, so that it can be said anew. */
export function CorrectLink({ operation }: { readonly operation: Operation }) {
  const { operations } = useOutbox();
  const place = whereItBelongs(operation, operations);
  return place ? (
    <ButtonLink to={place}>
      <FormattedMessage id="field.refused.correct" />
    </ButtonLink>
  ) : null;
}
