import { FormattedMessage } from 'react-intl';
import { useSays } from '../../../../says/use-says.js';
import { PhotoButton } from '../../device/PhotoButton.js';
import { useOrderWords } from '../../use-order-words.js';
import { type End, isDecidable, isEnded } from './order-end.js';
import { OrderAnswer } from './OrderAnswer.js';

interface Props {
  readonly order: {
    readonly id: string;
    readonly kind: string;
    readonly what: string;
    readonly waterAgainOn?: string | null;
    readonly state: string;
    readonly doneNote?: string | null;
    readonly finding?: { readonly state: string } | null;
  };
  readonly begin: () => Promise<string | null>;
  readonly end: End | null;
  readonly onChange: (end: End) => void;
}

/** One work order: how it ended, or the question. */
export function OrderEnd({ order, begin, end, onChange }: Props) {
  const { word } = useSays();
  const orderWords = useOrderWords();
  const { state, doneNote, finding } = order;
  const findingState = finding?.state ?? '';
  return (
    <div className="order-end">
      <h2>{orderWords(order)}</h2>
      {isEnded(state) && <p>{[word('workState', state), doneNote].filter(Boolean).join(': ')}</p>}
      {state === 'waiting for approval' && (
        <p>
          <FormattedMessage id="field.order.waits" />
        </p>
      )}
      {isDecidable(state) && (
        <>
          <OrderAnswer end={end} hasFinding={['open', 'in work'].includes(findingState)} onChange={onChange} />
          <PhotoButton begin={begin} kind="after" of={order.id} workOrderId={order.id} />
        </>
      )}
    </div>
  );
}
