import { FormattedMessage, useIntl } from 'react-intl';
import type { MeterOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { Fold } from '../../../page/drawing/Fold.js';
import { useVolumeColumn } from '../../../page/use-volume-column.js';
import { useSays } from '../../../says/use-says.js';
import { isFitting } from './is-fitting.js';
import { Head, Num, Table } from '../../../ui/tables/Table.js';

type Reading = MeterOfPropertyFragment['readings'][number];

interface Props {
  readonly name: string;
  readonly unit: string;
  readonly readings: readonly Reading[];
}

const SHOWN_AT_ONCE = 8;

/** Readings, and what each was judged to be; the older ones folded. */
export function ReadingsTable({ readings, ...rest }: Props) {
  const largest = Math.max(0, ...readings.map(({ litresSinceLast }) => litresSinceLast ?? 0));
  const earlier = readings.slice(SHOWN_AT_ONCE);
  if (readings.length === 0) return null;
  return (
    <>
      <OneTable readings={readings.slice(0, SHOWN_AT_ONCE)} largest={largest} {...rest} />
      {earlier.length > 0 && (
        <Fold summary={<FormattedMessage id="property.meter.show" values={{ count: earlier.length }} />}>
          <OneTable readings={earlier} largest={largest} {...rest} />
        </Fold>
      )}
    </>
  );
}

function OneTable({ name, unit, readings, largest }: Props & { readonly largest: number }) {
  const intl = useIntl();
  const column = useVolumeColumn(largest);
  return (
    <Table
      name={intl.formatMessage({ id: 'property.meter.table' }, { name: name })}
      isTight
      head={
        <tr>
          <Head>
            <FormattedMessage id="property.meter.when" />
          </Head>
          <Head isNumber>
            <FormattedMessage id="property.meter.register" values={{ unit: unit }} />
          </Head>
          <Head isNumber>
            <FormattedMessage id="property.meter.since" values={{ unit: column.unit }} />
          </Head>
          <Head>
            <FormattedMessage id="property.meter.by" />
          </Head>
          <Head>
            <FormattedMessage id="property.meter.check" />
          </Head>
        </tr>
      }
    >
      {readings.map((reading) => (
        <ReadingRow key={reading.id} reading={reading} figure={column.figure} />
      ))}
    </Table>
  );
}

function ReadingRow({ reading, figure }: { readonly reading: Reading; readonly figure: (litres: number | null | undefined) => string }) {
  const { moment, number } = useFormats();
  const { word } = useSays();
  const { readAt, register, litresSinceLast, source, recordedBy, judgement, replacedById, note } = reading;
  return (
    <tr className={replacedById ? 'replaced' : undefined}>
      <td>{moment(readAt)}</td>
      <Num>{number(register, 3)}</Num>
      <Num>{figure(litresSinceLast)}</Num>
      <td>{recordedBy ?? word('source', source)}</td>
      <td className={isFitting(reading) || replacedById ? 'soft' : 'clay'}>
        {replacedById ? <FormattedMessage id="property.meter.replaced" /> : word('judgement', judgement)}
        {note && <span className="xs soft line">{note}</span>}
      </td>
    </tr>
  );
}
