import { useQuery } from '@apollo/client/react';
import { useEffect, useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useSays } from '../../../says/use-says.js';
import { Button } from '../../../ui/forms/Button.js';

const judgeReadingDocument = graphql(`
  query JudgeReadingAtDesk($meterId: ID!, $readAt: DateTime!, $register: Float!) {
    judgeReading(meterId: $meterId, readAt: $readAt, register: $register) {
      judgement
      litresSinceLast
      likelyRegister
    }
  }
`);

interface Asked {
  readonly meterId: string;
  readonly readAt: string;
  readonly register: number;
}

interface Props extends Asked {
  /** Takes the number that was probably meant. */
  readonly onLikely: (register: number) => void;
}

/** So long nobody types any more. */
const PAUSE_MS = 400;

/** What the number tells, before it is saved. Without an answer nothing is said: saving does not wait for it. */
export function JudgedNote({ onLikely, ...asked }: Props) {
  const { meterId, readAt, register } = asked;
  const [settled, setSettled] = useState<Asked | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => setSettled({ meterId, readAt, register }), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [meterId, readAt, register]);
  const isSettled = settled?.register === register && settled.readAt === readAt;
  const { data } = useQuery(judgeReadingDocument, { variables: settled ?? asked, skip: !isSettled, fetchPolicy: 'network-only' });
  return (
    <div role="status" className="judged">
      {isSettled && data && <Judged {...data.judgeReading} onLikely={onLikely} />}
    </div>
  );
}

interface JudgedProps extends Pick<Props, 'onLikely'> {
  readonly judgement: string;
  readonly litresSinceLast?: number | null;
  readonly likelyRegister?: number | null;
}

function Judged({ judgement, litresSinceLast, likelyRegister, onLikely }: JudgedProps) {
  const { number } = useFormats();
  const { volume, word } = useSays();
  if (judgement === 'first')
    return (
      <p>
        <FormattedMessage id="property.judged.first" />
      </p>
    );
  if (judgement === 'ok' || judgement === 'rollover')
    return (
      <p>
        <FormattedMessage id="property.judged.ok" values={{ litres: volume(litresSinceLast) }} />
      </p>
    );
  const isLikely = typeof likelyRegister === 'number';
  const likely = isLikely ? number(likelyRegister, 3) : 'none';
  return (
    <>
      <p>
        <b>
          <FormattedMessage id="property.judged.other" values={{ judgement: word('judgement', judgement), likely }} />
        </b>
      </p>
      {isLikely && (
        <p className="after">
          <Button kind="plain" onClick={() => onLikely(likelyRegister)}>
            <FormattedMessage id="property.judged.use" values={{ register: likely }} />
          </Button>
        </p>
      )}
    </>
  );
}
