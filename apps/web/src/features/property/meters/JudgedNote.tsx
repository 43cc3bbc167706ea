import { useQuery } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';

const judgeReadingDocument = graphql(`
  query JudgeReadingAtDesk($meterId: ID!, $readAt: DateTime!, $register: Float!) {
    judgeReading(meterId: $meterId, readAt: $readAt, register: $register) {
      judgement
      litresSinceLast
      likelyRegister
    }
  }
`);

interface Props {
  readonly meterId: string;
  readonly readAt: string;
  readonly register: number;
}

/** So long nobody types any more. */
const PAUSE_MS = 400;

/** What the number tells, before it is saved. Without an answer nothing is said: saving does not wait for it. */
export function JudgedNote(asked: Props) {
  const { meterId, readAt, register } = asked;
  const [settled, setSettled] = useState<Props | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setSettled({ meterId, readAt, register }), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [meterId, readAt, register]);
  const isSettled = settled?.register === register && settled.readAt === readAt;
  const { data } = useQuery(judgeReadingDocument, { variables: settled ?? asked, skip: !isSettled, fetchPolicy: 'network-only' });
  return (
    <p role="status" className="judged">
      {isSettled && data && <Judged {...data.judgeReading} />}
    </p>
  );
}

interface JudgedProps {
  readonly judgement: string;
  readonly litresSinceLast?: number | null;
  readonly likelyRegister?: number | null;
}

function Judged({ judgement, litresSinceLast, likelyRegister }: JudgedProps) {
  const { number } = useFormats();
  const { volume, word } = useSays();
  if (judgement === 'first') return <FormattedMessage id="property.judged.first" />;
  if (judgement === 'ok' || judgement === 'rollover')
    return <FormattedMessage id="property.judged.ok" values={{ litres: volume(litresSinceLast) }} />;
  const likely = typeof likelyRegister === 'number' ? number(likelyRegister, 3) : 'none';
  return (
    <b>
      <FormattedMessage id="property.judged.other" values={{ judgement: word('judgement', judgement), likely }} />
    </b>
  );
}
