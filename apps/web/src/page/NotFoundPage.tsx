import { FormattedMessage, useIntl } from 'react-intl';
import { PageHead } from '../ui/frame/PageHead.js';
import { ButtonLink } from '../ui/forms/Button.js';

/** An address that leads nowhere says so, and where to go. */
export function NotFoundPage() {
  const intl = useIntl();
  return (
    <>
      <PageHead sentence={intl.formatMessage({ id: 'frame.notFound.title' })} lede={<FormattedMessage id="frame.notFound.lede" />} />
      <ButtonLink to="/" kind="main">
        <FormattedMessage id="frame.notFound.back" />
      </ButtonLink>
    </>
  );
}
