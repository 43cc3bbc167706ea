import { FormattedMessage, useIntl } from 'react-intl';
import type { SignInPageQuery } from '../../graphql/__generated__/graphql.js';
import { useSays } from '../../says/use-says.js';
import { Section } from '../../ui/frame/Section.js';
import type { SignIn } from './use-sign-in.js';

interface Props {
  readonly doors: SignInPageQuery['signInPage']['demo'];
  readonly signIn: SignIn;
}

/** The doors of the demonstration: one press each, with no password to type. */
export function DemoDoors({ doors, signIn }: Props) {
  const intl = useIntl();
  const { word } = useSays();
  if (doors.length === 0) return null;
  return (
    <Section heading={intl.formatMessage({ id: 'identity.doors.title' })} note={<FormattedMessage id="identity.doors.lede" />}>
      <ul className="doors">
        {doors.map(({ email, password, name, role, organizationName }) => (
          <li key={email}>
            <button
              type="button"
              className="btn"
              aria-busy={signIn.isBusy || undefined}
              onClick={() => (signIn.isBusy ? undefined : void signIn.run(email, password))}
            >
              <FormattedMessage id="identity.door" values={{ role: word('role', role), organization: organizationName }} />
              <span>{name}</span>
            </button>
          </li>
        ))}
      </ul>
    </Section>
  );
}
