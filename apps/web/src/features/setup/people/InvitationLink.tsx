import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';

interface Props {
  readonly link: string;
  readonly name: string;
}

/** A link of the server may be a path; what is sent to somebody must be whole. */
const whole = (link: string): string => new URL(link, window.location.origin).toString();

/** The link that was made, shown this once. */
export function InvitationLink({ link, name }: Props) {
  const [copied, setCopied] = useState<'no' | 'yes' | 'failed'>('no');
  const copy = (): void => {
    // A page without https has no clipboard: the link is there to be selected.
    if (!('clipboard' in navigator)) return setCopied('failed');
    navigator.clipboard.writeText(whole(link)).then(
      () => setCopied('yes'),
      () => setCopied('failed'),
    );
  };
  return (
    <div role="status">
      <p>
        <FormattedMessage id="setup.invite.made" values={{ name }} />
      </p>
      <div className="link-box">
        <code>{whole(link)}</code>
        <Button onClick={copy}>
          <FormattedMessage id={copied === 'yes' ? 'setup.invite.copied' : 'setup.invite.copy'} />
        </Button>
        {copied === 'failed' && <FormattedMessage id="setup.invite.notCopied" />}
      </div>
    </div>
  );
}
