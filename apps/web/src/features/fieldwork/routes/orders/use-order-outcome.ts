import { useState } from 'react';
import { useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useToast } from '../../../../ui/dialogs/Toasts.js';

/** What a deed on a work order may come to. */
export type OrderAnswer =
  | { readonly __typename: 'WorkOrder'; readonly state: string }
  | { readonly __typename: 'ChangedMeanwhile'; readonly changedBy?: string | null; readonly changedAt?: string | null }
  | { readonly __typename: 'ApprovalNeeded'; readonly needed: number; readonly limit: number };

interface Outcome {
  /** Why it was not done, as a sentence. */
  readonly refusal: string | null;
  /** Takes the answer; true where the order is as it was wished. */
  readonly settle: (answer: OrderAnswer) => boolean;
}

/** Says what came of a deed on a work order. */
export function useOrderOutcome(done: string): Outcome {
  const intl = useIntl();
  const { time, money } = useFormats();
  const toast = useToast();
  const [refusal, setRefusal] = useState<string | null>(null);
  const settle = (answer: OrderAnswer): boolean => {
    switch (answer.__typename) {
      case 'WorkOrder':
        // Whose price the client has not agreed to stays where it is.
        if (answer.state === 'waiting for approval') {
          setRefusal(intl.formatMessage({ id: 'routes.stillWaits' }));
          return false;
        }
        setRefusal(null);
        toast({ words: done });
        return true;
      case 'ChangedMeanwhile':
        setRefusal(intl.formatMessage({ id: 'routes.changed' }, { by: answer.changedBy ?? 'nobody', time: time(answer.changedAt) }));
        return false;
      case 'ApprovalNeeded':
        setRefusal(intl.formatMessage({ id: 'routes.needsApproval' }, { cost: money(answer.needed), limit: money(answer.limit) }));
        return false;
    }
  };
  return { refusal, settle };
}
