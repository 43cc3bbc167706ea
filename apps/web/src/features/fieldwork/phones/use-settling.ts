import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';

const chooseDocument = graphql(`
  mutation ChooseWord($key: ID!, $word: String!) {
    chooseWord(key: $key, word: $word) {
      key
    }
  }
`);

const settleDocument = graphql(`
  mutation SettleOperation($key: ID!) {
    settleOperation(key: $key) {
      key
    }
  }
`);

const takeInDocument = graphql(`
  mutation TakeInOperation($key: ID!) {
    takeInOperation(key: $key) {
      key
      verdict
      problem {
        code
        message
      }
    }
  }
`);

/** Settles what somebody has looked at, lets one of two words stand, or has what was refused done after all. */
export function useSettling(key: string) {
  const intl = useIntl();
  const toast = useToast();
  const choose = useDeed(chooseDocument, { refetch: ['Phones'] });
  const settle = useDeed(settleDocument, { refetch: ['Phones'] });
  const takeIn = useDeed(takeInDocument, { refetch: ['Phones'] });
  const say = (done: unknown): void => {
    if (done) toast({ words: intl.formatMessage({ id: 'phones.settled' }) });
  };
  return {
    choose: async (word: 'sent' | 'other') => say(await choose.run({ key, word })),
    settle: async () => say(await settle.run({ key })),
    takeIn: async () => {
      const { verdict } = (await takeIn.run({ key }))?.takeInOperation ?? {};
      if (verdict) toast({ words: intl.formatMessage({ id: verdict === 'refused' ? 'phones.stillRefused' : 'phones.takenIn' }) });
    },
    isBusy: choose.isBusy || settle.isBusy || takeIn.isBusy,
    problem: choose.problem ?? settle.problem ?? takeIn.problem,
  };
}
