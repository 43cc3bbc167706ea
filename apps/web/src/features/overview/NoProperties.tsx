import { FormattedMessage, useIntl } from 'react-intl';
import { paths } from '../../page/paths.js';
import { ButtonLink } from '../../ui/forms/Button.js';
import { PageHead } from '../../ui/frame/PageHead.js';

/** The first pages of a company that has brought nothing in yet: there is one thing to do. */
export function NoProperties() {
  const intl = useIntl();
  return (
    <>
      <PageHead sentence={intl.formatMessage({ id: 'overview.empty' })} lede={intl.formatMessage({ id: 'overview.empty.how' })} />
      <ButtonLink to={paths.setup} kind="main">
        <FormattedMessage id="overview.empty.do" />
      </ButtonLink>
    </>
  );
}
