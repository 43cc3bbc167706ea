import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../../page/use-deed.js';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { Button } from '../../../../ui/forms/Button.js';
import { ErrorState } from '../../../../ui/states/States.js';

const orderSeasonDocument = graphql(`
  mutation OrderSeason($month: Month!, $propertyIds: [ID!]!, $what: String!) {
    orderSeason(month: $month, propertyIds: $propertyIds, what: $what) {
      id
    }
  }
`);

/** Controllers are planned one by one; so many properties are asked for at a time, so that the page can say how far it is. */
const AT_ONCE = 5;

interface Props {
  readonly isOpen: boolean;
  readonly month: string;
  readonly propertyIds: readonly string[];
  readonly onClose: () => void;
}

interface Progress {
  readonly looked: number;
  readonly made: number;
}

/** Has every controller looked at for a month, and makes orders where new settings are worth the way. */
export function SeasonDialog({ isOpen, onClose, ...asked }: Props) {
  const intl = useIntl();
  const { month: inWords } = useFormats();
  return (
    <Dialog isOpen={isOpen} heading={intl.formatMessage({ id: 'season.title' }, { month: inWords(asked.month) })} onClose={onClose}>
      {isOpen && <Season {...asked} onClose={onClose} />}
    </Dialog>
  );
}

function Season({ month, propertyIds, onClose }: Omit<Props, 'isOpen'>) {
  const intl = useIntl();
  const { month: inWords } = useFormats();
  const [progress, setProgress] = useState<Progress | null>(null);
  const order = useDeed(orderSeasonDocument, { refetch: ['MonthPlan'] });
  const what = intl.formatMessage({ id: 'season.what' }, { month: inWords(month) });
  const run = async (from: Progress): Promise<void> => {
    let { looked, made } = from;
    setProgress({ looked, made });
    while (looked < propertyIds.length) {
      const some = propertyIds.slice(looked, looked + AT_ONCE);
      const answer = await order.run({ month, propertyIds: some, what });
      if (!answer) return;
      looked += some.length;
      made += answer.orderSeason.length;
      setProgress({ looked, made });
    }
  };
  const isOver = progress !== null && progress.looked >= propertyIds.length;
  return (
    <div className="form">
      <p>
        <FormattedMessage id="season.how" />
      </p>
      {order.problem ? <ErrorState problem={order.problem} /> : null}
      <p role="status">
        {progress && (
          <FormattedMessage
            id={isOver ? 'season.over' : 'season.looked'}
            values={{ looked: progress.looked, all: propertyIds.length, made: progress.made }}
          />
        )}
      </p>
      <div className="form-end">
        {isOver ? (
          <Button kind="main" onClick={onClose}>
            <FormattedMessage id="season.close" />
          </Button>
        ) : (
          <Button kind="main" isBusy={order.isBusy} onClick={() => void run(progress ?? { looked: 0, made: 0 })}>
            <FormattedMessage id={progress && !order.isBusy ? 'season.goOn' : 'season.make'} />
          </Button>
        )}
      </div>
    </div>
  );
}
