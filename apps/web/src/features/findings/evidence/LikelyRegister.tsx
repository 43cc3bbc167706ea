import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useRecordedWords, useRecordReading } from '../../../page/work/use-record-reading.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { ErrorState } from '../../../ui/states/States.js';
import type { LikelyReading } from './read-evidence.js';

const readingsOfFindingDocument = graphql(`
  query ReadingsOfFinding($propertyId: ID!) {
    property(id: $propertyId) {
      id
      meters {
        id
        readings(first: 500) {
          id
          register
          readAt
          replacedById
        }
      }
    }
  }
`);

interface Props {
  readonly propertyId: string;
  readonly likely: LikelyReading;
}

/** Offers the register that was probably meant in the place of the doubtful one, which stays on record. */
export function LikelyRegister({ propertyId, likely }: Props) {
  const { data, error } = useQuery(readingsOfFindingDocument, { variables: { propertyId } });
  if (error) return <ErrorState problem={error} />;
  const meter = data?.property?.meters.find(({ readings }) => readings.some(({ id }) => id === likely.readingId));
  const reading = meter?.readings.find(({ id }) => id === likely.readingId);
  if (!meter || !reading || reading.replacedById) return null;
  return <Offer meterId={meter.id} reading={reading} register={likely.register} />;
}

interface OfferProps {
  readonly meterId: string;
  readonly reading: { readonly id: string; readonly register: number; readonly readAt: string };
  readonly register: number;
}

function Offer({ meterId, reading, register }: OfferProps) {
  const intl = useIntl();
  const { number } = useFormats();
  const toast = useToast();
  const say = useRecordedWords();
  const record = useRecordReading(meterId, ['FindingDetail', 'ReadingsOfFinding']);
  const values = { register: number(register, 3), read: number(reading.register, 3) };
  const take = async (): Promise<void> => {
    const note = intl.formatMessage({ id: 'findings.likely.note' }, values);
    const recorded = await record.run({ register, readAt: reading.readAt, note, replacesId: reading.id });
    if (recorded) toast({ words: say(recorded) });
  };
  return (
    <>
      {record.problem ? <ErrorState problem={record.problem} /> : null}
      <p className="after">
        <Button isBusy={record.isBusy} onClick={() => void take()}>
          <FormattedMessage id="findings.likely.take" values={values} />
        </Button>
      </p>
      <p className="soft">
        <FormattedMessage id="findings.likely.how" />
      </p>
    </>
  );
}
