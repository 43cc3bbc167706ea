import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { Dialog } from '../../../ui/dialogs/Dialog.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { ErrorState } from '../../../ui/states/States.js';

const clearDemoDocument = graphql(`
  mutation ClearDemo {
    clearDemo
  }
`);

interface Props {
  readonly name: string;
  readonly onCleared?: () => void;
}

// A full load leaves nothing of the made-up valley in memory.
const toTheDoor = (): void => window.location.assign('/sign-in');

/** Takes the made-up valley away: one press, and one that says what goes. */
export function ClearDemo({ name, onCleared = toTheDoor }: Props) {
  const intl = useIntl();
  const [isAsked, setAsked] = useState(false);
  const clear = useDeed(clearDemoDocument);
  return (
    <Section heading={intl.formatMessage({ id: 'setup.demo.title' })} note={<FormattedMessage id="setup.demo.note" />}>
      <Button onClick={() => setAsked(true)}>
        <FormattedMessage id="setup.demo.clear" />
      </Button>
      <Dialog
        isOpen={isAsked}
        heading={intl.formatMessage({ id: 'setup.demo.ask' })}
        onClose={() => setAsked(false)}
        actions={
          <>
            <Button
              kind="main"
              isBusy={clear.isBusy}
              onClick={() => void clear.run({}).then((answer) => (answer?.clearDemo ? onCleared() : undefined))}
            >
              <FormattedMessage id="setup.demo.do" />
            </Button>
            <Button kind="plain" onClick={() => setAsked(false)}>
              <FormattedMessage id="setup.demo.keep" />
            </Button>
          </>
        }
      >
        <p>
          <FormattedMessage id="setup.demo.goes" values={{ name }} />
        </p>
        {clear.problem ? <ErrorState problem={clear.problem} /> : null}
      </Dialog>
    </Section>
  );
}
