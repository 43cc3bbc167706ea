import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import { useVolumeColumn } from '../../../../page/use-volume-column.js';
import { useSays } from '../../../../says/use-says.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { clockInWords } from '../../../../programs/days-in-words.js';
import type { Result } from '../plan-document.js';

/** What is set now, or one of the two offers, replayed over the month. */
export interface Shown {
  readonly key: 'present' | 'least' | 'full';
  readonly result: Result;
}

interface Props {
  readonly shown: readonly Shown[];
  readonly name: string;
}

const VOLUMES = ['used', 'unmet', 'wasted', 'ranOff'] as const;

/** What each way leaves unmet or wasted, when it ends, what it costs to enter, and what it does not keep. */
export function ResultsTable({ shown, name }: Props) {
  const intl = useIntl();
  const formats = useFormats();
  const column = useVolumeColumn(Math.max(...shown.map(({ result }) => Math.max(result.usedLitres, result.neededLitres))));
  const row = (key: string, head: ReactNode, of: (result: Result) => ReactNode) => (
    <tr key={key}>
      <th scope="row">{head}</th>
      {shown.map(({ key: way, result }) => (
        <Num key={way}>{of(result)}</Num>
      ))}
    </tr>
  );
  return (
    <div className="plan-results">
      <Table
        name={intl.formatMessage({ id: 'plan.table' }, { name })}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="plan.needed" values={{ needed: column.figure(shown.at(-1)?.result.neededLitres), unit: column.unit }} />
            </Head>
            {shown.map(({ key }) => (
              <Head key={key} isNumber>
                <FormattedMessage id={`plan.way.${key}`} />
              </Head>
            ))}
          </tr>
        }
      >
        {VOLUMES.map((volume) =>
          row(volume, <FormattedMessage id={`plan.${volume}`} values={{ unit: column.unit }} />, (result) =>
            column.figure(result[`${volume}Litres`]),
          ),
        )}
        {row('ends', <FormattedMessage id="plan.ends" />, ({ endsAt }) =>
          endsAt ? <FormattedMessage id="plan.endsAt" values={{ time: clockInWords(formats, endsAt) }} /> : NOT_KNOWN,
        )}
        {row('presses', <FormattedMessage id="plan.presses" />, ({ keyPresses }) => formats.number(keyPresses))}
        {row('kept', <FormattedMessage id="plan.kept" />, (result) => (
          <Unkept result={result} />
        ))}
      </Table>
    </div>
  );
}

/** Rules and limits that would not be kept, each once. */
function Unkept({ result: { breaches, limits } }: { readonly result: Result }) {
  const intl = useIntl();
  const { word } = useSays();
  const words = [
    ...breaches.map(({ rule, kind, times }) => intl.formatMessage({ id: 'plan.breach' }, { rule, kind: word('plan.breach', kind), times })),
    ...limits.map((limit) => word('plan.limit', limit)),
  ];
  if (words.length === 0) return <FormattedMessage id="plan.keptAll" />;
  return [...new Set(words)].map((each) => (
    <span className="line" key={each}>
      {each}
    </span>
  ));
}
