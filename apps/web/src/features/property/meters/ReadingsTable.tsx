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
  const decimals = Math.max(0, ...readings.map(({ register }) => decimalsOf(register)));
  const earlier = readings.slice(SHOWN_AT_ONCE);
  const shared = { ...rest, largest, decimals };
  if (readings.length === 0) return null;
  return (
    <>
      <OneTable readings={readings.slice(0, SHOWN_AT_ONCE)} {...shared} />
      {earlier.length > 0 && (
        <Fold summary={<FormattedMessage id="property.meter.show" values={{ count: earlier.length }} />}>
          <OneTable readings={earlier} {...shared} />
        </Fold>
      )}
    </>
  );
}

/** How many decimals a register was read with, at most three; a column shows all with the most. */
const decimalsOf = (register: number): number => String(Number(register.toFixed(3))).split('.')[1]?.length ?? 0;

function OneTable({ name, unit, readings, largest, decimals }: Props & { readonly largest: number; readonly decimals: number }) {
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
        <ReadingRow key={reading.id} reading={reading} decimals={decimals} figure={column.figure} />
      ))}
    </Table>
  );
}

interface RowProps {
  readonly reading: Reading;
  readonly decimals: number;
  readonly figure: (litres: number | null | undefined) => string;
}

function ReadingRow({ reading, decimals, figure }: RowProps) {
  const formats = useFormats();
  const { word } = useSays();
  const { readAt, register, litresSinceLast, source, recordedBy, judgement, replacedById, note } = reading;
  return (
    <tr className={replacedById ? 'replaced' : undefined}>
      <td>{formats.moment(readAt)}</td>
      <Num>{formats.figure(register, decimals)}</Num>
      <Num>{figure(litresSinceLast)}</Num>
      <td>{recordedBy ?? word('source', source)}</td>
      <td className={isFitting(reading) || replacedById ? 'soft' : 'clay'}>
        {replacedById ? <FormattedMessage id="property.meter.replaced" /> : word('judgement', judgement)}
        {note && <span className="xs soft line">{note}</span>}
      </td>
    </tr>
  );
}
