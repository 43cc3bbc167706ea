import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import type { ControllerOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fold } from '../../../page/drawing/Fold.js';
import { sentenceCase } from '../../../page/values/sentence-case.js';
import { useSays } from '../../../says/use-says.js';
import { Head, Table } from '../../../ui/tables/Table.js';
import { settingsChanges } from '../../../page/work/settings-changes.js';

type Fact = ControllerOfPropertyFragment['settings'][number];

interface Props {
  readonly settings: readonly Fact[];
  readonly name: string;
}

const SHOWN_AT_ONCE = 6;

/** Dated facts, the newest first: each against what stood there before it. A plan is a plan and stands in nobody's way. */
export function SettingsHistory({ settings, name }: Props) {
  const newestFirst = [...settings].sort((one, other) => other.localTime.localeCompare(one.localTime));
  if (newestFirst.length === 0) return null;
  const rows = newestFirst.map((fact, at) => (
    <HistoryRow key={fact.id} fact={fact} before={newestFirst.slice(at + 1).find(({ record }) => record !== 'planned') ?? null} />
  ));
  const earlier = rows.slice(SHOWN_AT_ONCE);
  return (
    <>
      <HistoryTable name={name} rows={rows.slice(0, SHOWN_AT_ONCE)} />
      {earlier.length > 0 && (
        <Fold summary={<FormattedMessage id="property.history.show" values={{ count: earlier.length }} />}>
          <HistoryTable name={name} rows={earlier} />
        </Fold>
      )}
    </>
  );
}

function HistoryTable({ name, rows }: { readonly name: string; readonly rows: readonly ReactNode[] }) {
  const intl = useIntl();
  return (
    <Table
      name={intl.formatMessage({ id: 'property.history' }, { name })}
      isTight
      head={
        <tr>
          {(['date', 'record', 'what', 'by'] as const).map((what) => (
            <Head key={what}>
              <FormattedMessage id={`property.history.${what}`} />
            </Head>
          ))}
        </tr>
      }
    >
      {rows}
    </Table>
  );
}

function HistoryRow({ fact, before }: { readonly fact: Fact; readonly before: Fact | null }) {
  const intl = useIntl();
  const formats = useFormats();
  const { word } = useSays();
  const changes = before ? settingsChanges(intl, formats, before, fact) : null;
  const words =
    changes === null
      ? intl.formatMessage({ id: 'property.history.first' })
      : changes.length === 0
        ? intl.formatMessage({ id: 'property.history.same' })
        : `${sentenceCase(changes.join('; '))}.`;
  return (
    <tr>
      <td className="nw">{formats.dayOfYear(fact.localTime.slice(0, 10))}</td>
      <td className="nw">{word('record', fact.record)}</td>
      <td>{words}</td>
      <td>{fact.recordedBy}</td>
    </tr>
  );
}
