import type { FragmentType } from '@apollo/client';
import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { FindingsOfPropertyFragment, GaugedAccountFragment } from '../../../graphql/__generated__/graphql.js';
import type { MessageId } from '../../../i18n/catalogue.js';
import { gaugedAccount } from '../../../page/drawing/AccountGauge.js';
import { useMasked } from '../../../page/use-masked.js';
import { useVolumeColumn, type WrittenColumn } from '../../../page/use-volume-column.js';
import type { Names } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { Table } from '../../../ui/tables/Table.js';
import { findingsOfProperty } from '../records/findings-of-property.js';
import { FindingLink } from './FindingLink.js';

type Step = 'landscape' | 'settings' | 'unexplained';
type Gap = GaugedAccountFragment['settingsGap'];

interface Props {
  readonly account: FragmentType<GaugedAccountFragment>;
  readonly overLitres: number | null;
  readonly underLitres: number | null;
  readonly property: FragmentType<FindingsOfPropertyFragment>;
  readonly names: Names;
}

/** Which kinds of finding tell of which gap. */
const KINDS: Readonly<Record<Step, readonly string[]>> = {
  landscape: ['over allowance', 'mixed water needs'],
  settings: ['over-programmed', 'under-programmed', 'watered in rain', 'breaks a rule'],
  unexplained: [
    'unexplained use',
    'not delivering',
    'steady flow',
    'off-schedule run',
    'zone flow changed',
    'flow to be tested',
    'overwatered',
  ],
};
const GAP_NAMES: Readonly<Record<Step, MessageId>> = {
  landscape: 'property.why.landscape',
  settings: 'property.why.settingsGap',
  unexplained: 'property.why.unexplainedGap',
};

/** From allowed to metered in three steps that add up, each with its reason and the way to what was found. */
export function WhyItIsOff({ account: masked, overLitres, underLitres, property, names }: Props) {
  const intl = useIntl();
  const account = useMasked(gaugedAccount, masked);
  const { findings } = useMasked(findingsOfProperty, property);
  const { volume } = useSays(names);
  const column = useVolumeColumn(
    Math.max(0, ...(['allowed', 'needed', 'programmed', 'metered'] as const).map((mark) => account[mark].litres ?? 0)),
  );
  const settings =
    overLitres === null || underLitres === null || account.settingsGap.estimate
      ? intl.formatMessage({ id: 'property.why.settings.plain' })
      : intl.formatMessage({ id: 'property.why.settings' }, { over: volume(overLitres), under: volume(underLitres) });
  const words: Readonly<Record<Step, string>> = {
    landscape: intl.formatMessage({
      id: (account.landscapeGap.litres ?? 0) > 0 ? 'property.why.landscape.above' : 'property.why.landscape.below',
    }),
    settings,
    unexplained: intl.formatMessage({
      id: (account.unexplainedGap.litres ?? 0) < 0 ? 'property.why.unexplained.below' : 'property.why.unexplained.above',
    }),
  };
  return (
    <div>
      <h3>
        <FormattedMessage id="property.why" />
      </h3>
      <Table
        name={intl.formatMessage({ id: 'property.why.table' })}
        look="ledger"
        head={null}
        foot={
          <VolumeRow
            head={intl.formatMessage({ id: 'property.why.metered' }, { unit: column.unit })}
            volume={account.metered}
            column={column}
            names={names}
          />
        }
      >
        <VolumeRow head={intl.formatMessage({ id: 'property.why.allowed' })} volume={account.allowed} column={column} names={names} />
        {(['landscape', 'settings', 'unexplained'] as const).map((step) => (
          <StepRow key={step} step={step} words={words[step]} gap={account[`${step}Gap`]} column={column} names={names}>
            {findings
              .filter(({ kind, state }) => KINDS[step].includes(kind) && (state === 'open' || state === 'in work'))
              .map((finding) => (
                <FindingLink key={finding.id} finding={finding} />
              ))}
          </StepRow>
        ))}
      </Table>
    </div>
  );
}

interface VolumeProps {
  readonly head: string;
  readonly volume: GaugedAccountFragment['allowed'];
  readonly column: WrittenColumn;
  readonly names: Names;
}

function VolumeRow({ head, volume: { litres, reason, estimatedShare }, column, names }: VolumeProps) {
  const { reason: said } = useSays(names);
  return (
    <tr>
      <td>
        {head}
        {reason && <span className="xs soft line">{said(reason)}</span>}
        {estimatedShare > 0 && (
          <>
            {' '}
            <span className="estimated">
              <FormattedMessage id="overview.estimated" />
            </span>
          </>
        )}
      </td>
      <td className="num">{column.figure(litres)}</td>
    </tr>
  );
}

interface StepProps {
  readonly step: Step;
  readonly words: string;
  readonly gap: Gap;
  readonly column: WrittenColumn;
  readonly names: Names;
  readonly children: ReactNode;
}

const COLOURS: Readonly<Record<Step, string>> = { landscape: '', settings: 'amber', unexplained: 'clay' };

/** One gap: what it means, or why it is not known; within what can be measured there is nothing to do. */
function StepRow({ step, words, gap, column, names, children }: StepProps) {
  const { litres, within } = gap;
  const isKnown = typeof litres === 'number';
  return (
    <tr>
      <td>
        {isKnown ? words : <FormattedMessage id={GAP_NAMES[step]} />}
        {isKnown ? <Reservations gap={gap} /> : <NotKnown gap={gap} names={names} />}
        {children}
      </td>
      <td className={`num ${isKnown && !within ? COLOURS[step] : ''}`}>{column.signed(litres)}</td>
    </tr>
  );
}

function Reservations({ gap: { within, estimate } }: { readonly gap: Gap }) {
  return (
    <>
      {within && (
        <span className="xs soft line">
          <FormattedMessage id="property.why.within" />
        </span>
      )}
      {estimate && (
        <span className="xs soft line">
          <FormattedMessage id="says.estimate" />
        </span>
      )}
    </>
  );
}

function NotKnown({ gap: { reason }, names }: { readonly gap: Gap; readonly names: Names }) {
  const said = useSays(names).reason;
  return reason && <span className="xs soft line">{said(reason)}</span>;
}
