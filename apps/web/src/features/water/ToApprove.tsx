import type { FragmentType } from '@apollo/client';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { ToApproveFragment } from '../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../i18n/catalogue.js';
import type { Formats } from '../../i18n/formats.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { useDeed } from '../../page/use-deed.js';
import { useMaskedList } from '../../page/use-masked.js';
import { messageOf, moneyAsWritten } from '../../says/saying.js';
import { useSays } from '../../says/use-says.js';
import { useToast } from '../../ui/dialogs/Toasts.js';
import { Button } from '../../ui/forms/Button.js';
import { Section } from '../../ui/frame/Section.js';
import { ErrorState } from '../../ui/states/States.js';

export const toApprove = graphql(`
  fragment ToApprove on Recommendation {
    id
    version
    from
    propertyName
    zoneName
    kind
    what
    cost
    litres
    money
  }
`);
const approveDocument = graphql(`
  mutation ApproveRecommended($id: ID!, $version: Int!) {
    approveRecommended(id: $id, version: $version) {
      id
    }
  }
`);

/** What the office recommends and waits for: a yes makes work of it, or asks for its price. Said twice, for it costs money. */
export function ToApprove({ lines: masked }: { readonly lines: readonly FragmentType<ToApproveFragment>[] }) {
  const intl = useIntl();
  const lines = useMaskedList(toApprove, masked);
  if (lines.length === 0) return null;
  return (
    <Section heading={intl.formatMessage({ id: 'yourWater.toApprove' }, { count: lines.filter((line) => !isOfferAwaited(line)).length })}>
      <ul className="reports">
        {lines.map((line) =>
          isOfferAwaited(line) ? <OfferAwaited key={line.id} line={line} /> : <OneToApprove key={line.id} line={line} />,
        )}
      </ul>
    </Section>
  );
}

/** Whether the office has yet to name the price: until then nothing can be approved. */
const isOfferAwaited = ({ from, cost }: ToApproveFragment): boolean => from === 'work order' && typeof cost !== 'number';

function OfferAwaited({ line }: { readonly line: ToApproveFragment }) {
  return (
    <li>
      <p>{useWhat(line)}</p>
      <p className="soft">
        <FormattedMessage id="yourWater.offer.awaited" />
      </p>
    </li>
  );
}

const APPROVES = {
  begin: 'yourWater.approve',
  beginThis: 'yourWater.approveThis',
  sure: 'yourWater.sure.order',
  yes: 'yourWater.yes',
  thanks: 'yourWater.approved',
} as const;
/** What has no price is not approved: its price is asked for. */
const ASKS_OFFER = {
  begin: 'yourWater.offer',
  beginThis: 'yourWater.offer.this',
  sure: 'yourWater.offer.sure',
  yes: 'yourWater.offer.yes',
  thanks: 'yourWater.offer.asked',
} as const;

function OneToApprove({ line }: { readonly line: ToApproveFragment }) {
  const intl = useIntl();
  const toast = useToast();
  const [asked, setAsked] = useState(false);
  const approve = useDeed(approveDocument, { refetch: ['YourWater'] });
  const what = useWhat(line);
  const { thanks, sure, yes, begin, beginThis } = typeof line.cost === 'number' ? APPROVES : ASKS_OFFER;
  const say = async (): Promise<void> => {
    if (await approve.run({ id: line.id, version: line.version })) toast({ words: intl.formatMessage({ id: thanks }) });
  };
  return (
    <li>
      <p>{what}</p>
      <p className="form-end">
        {asked ? (
          <>
            <span>
              <FormattedMessage id={sure} />
            </span>
            <Button kind="main" isBusy={approve.isBusy} onClick={() => void say()}>
              <FormattedMessage id={yes} />
            </Button>
            <Button kind="plain" onClick={() => setAsked(false)}>
              <FormattedMessage id="yourWater.notNow" />
            </Button>
          </>
        ) : (
          <Button onClick={() => setAsked(true)} aria-label={intl.formatMessage({ id: beginThis }, { what })}>
            <FormattedMessage id={begin} />
          </Button>
        )}
      </p>
      {approve.problem ? <ErrorState problem={approve.problem} /> : null}
    </li>
  );
}

const MONTHS = 12;

const savedMoney = (formats: Formats, litres: number | null | undefined, money: number): number =>
  typeof litres === 'number' ? moneyAsWritten(formats, litres * MONTHS, money * MONTHS) : money * MONTHS;

/** What it is, where, what it costs, and what it would save in a year. */
function useWhat({ propertyName, zoneName, kind, what, cost, litres, money }: ToApproveFragment): string {
  const intl = useIntl();
  const formats = useFormats();
  const { volume } = useSays();
  const where = [propertyName, zoneName].filter(Boolean).join(', ');
  const told = what || (messageOf({ intl }, `yourWater.upgrade.${kind}`) ?? intl.formatMessage({ id: `work.${kind}` as MessageId }));
  return intl.formatMessage(
    { id: 'yourWater.toApprove.line' },
    {
      where,
      what: told.replace(/\.$/, ''),
      cost: typeof cost === 'number' ? formats.money(cost) : 'none',
      litres: typeof litres === 'number' ? volume(litres * MONTHS) : 'none',
      money: typeof money === 'number' ? formats.money(savedMoney(formats, litres, money)) : 'none',
    },
  );
}
