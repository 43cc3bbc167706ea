import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import { useVolumeColumn } from '../../../../page/use-volume-column.js';
import type { Names } from '../../../../says/names.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import type { Offer, Plan } from '../plan-document.js';

interface Props {
  readonly zones: Plan['choices'];
  /** The full program, zone by zone: what it was planned for. */
  readonly planned: Offer['result']['zones'];
  /** Zones that the full program cannot give enough: more minutes of it would not give a choice either. */
  readonly short: Plan['impossible'];
  readonly name: string;
  readonly names: Names;
}

const CHOICES = ['thirstiest', 'middle', 'modest'] as const;

/** Zones whose plants do not fit together: what is planned for, what each choice gives in the month, its minutes, and what lies between them. */
export function ZoneChoicesTable({ zones, planned, short, name, names }: Props) {
  const intl = useIntl();
  const column = useVolumeColumn(Math.max(0, ...zones.flatMap(({ choices }) => choices.map(({ neededLitres }) => neededLitres))));
  if (zones.length === 0) return null;
  return (
    <div className="offer">
      <h3>
        <FormattedMessage id="plan.choices" values={{ count: zones.length }} />
      </h3>
      <p>
        <FormattedMessage
          id="plan.choices.how"
          values={{ short: zones.filter((zone) => short.some(({ zoneId }) => zoneId === zone.zoneId)).length }}
        />
      </p>
      <Table
        name={intl.formatMessage({ id: 'plan.choices.table' }, { name })}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="plan.zone" />
            </Head>
            <Head isNumber>
              <FormattedMessage id="plan.choice.planned" values={{ unit: column.unit }} />
            </Head>
            {CHOICES.map((choice) => (
              <Head key={choice} isNumber>
                <FormattedMessage id={`plan.choice.${choice}`} values={{ unit: column.unit }} />
              </Head>
            ))}
            <Head isNumber>
              <FormattedMessage id="plan.choice.between" values={{ unit: column.unit }} />
            </Head>
          </tr>
        }
      >
        {zones.map((zone) => (
          <ZoneRow key={zone.zoneId} {...{ zone, planned, short, names, column }} />
        ))}
      </Table>
    </div>
  );
}

interface RowProps extends Omit<Props, 'zones' | 'name'> {
  readonly zone: Plan['choices'][number];
  readonly column: ReturnType<typeof useVolumeColumn>;
}

function ZoneRow({ zone: { zoneId, station, choices }, planned, short, names, column }: RowProps) {
  const formats = useFormats();
  const isShort = short.some((need) => need.zoneId === zoneId);
  const litres = choices.map(({ neededLitres }) => neededLitres);
  return (
    <tr>
      <td>
        <span className="soft">{station}</span> {names.of(zoneId)}
      </td>
      <Num>{column.figure(planned.find((zone) => zone.zoneId === zoneId)?.neededLitres)}</Num>
      {CHOICES.map((wanted) => {
        const found = choices.find(({ choice }) => choice === wanted);
        return (
          <Num key={wanted}>
            {found ? column.figure(found.neededLitres) : NOT_KNOWN}
            {!isShort && typeof found?.minutes === 'number' && (
              <span className="line soft">{formats.minutes(Math.round(found.minutes))}</span>
            )}
          </Num>
        );
      })}
      <Num>{column.figure(Math.max(...litres) - Math.min(...litres))}</Num>
    </tr>
  );
}
