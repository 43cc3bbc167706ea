import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { PauseRowFragment } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { paths } from '../../page/paths.js';
import { useSays } from '../../says/use-says.js';
import { Head, Num, Table } from '../../ui/tables/Table.js';

graphql(`
  fragment PauseRow on ControllerToPause {
    controllerId
    property {
      id
      name
    }
    controller {
      id
      name
    }
    rainMm
    lastRainOn
    waterAgainOn
    until
    days
    because
    firstZone
    keptLitres
    pausesItself
    pausedUntil
    order {
      id
      state
      day
      crew {
        id
        name
      }
    }
  }
`);

interface Props {
  readonly name: string;
  readonly pauses: readonly PauseRowFragment[];
  /** Which are chosen, in whichever table they stand. */
  readonly chosen: ReadonlySet<string>;
  readonly onChoose: (chosen: ReadonlySet<string>) => void;
}

const HEADS = ['controller', 'rain', 'until', 'because', 'kept'] as const;
const NUMBERS: readonly string[] = ['rain', 'kept'];

/** Controllers under each other: rain, the first day with water, why no longer, and the water that it keeps. */
export function PauseTable({ name, pauses, chosen, onChoose }: Props) {
  const intl = useIntl();
  const { volume } = useSays();
  const all = pauses.map(({ controllerId }) => controllerId);
  const areAll = all.every((id) => chosen.has(id));
  const toggle = (id: string): void => {
    const next = new Set(chosen);
    if (!next.delete(id)) next.add(id);
    onChoose(next);
  };
  const known = pauses.flatMap(({ keptLitres }) => keptLitres ?? []);
  return (
    <Table
      name={name}
      head={
        <tr>
          <Head>
            <input
              type="checkbox"
              aria-label={intl.formatMessage({ id: 'rain.chooseAll' }, { table: name })}
              checked={areAll}
              onChange={() => onChoose(new Set([...chosen, ...all].filter((id) => !areAll || !all.includes(id))))}
            />
          </Head>
          {HEADS.map((head) => (
            <Head key={head} isNumber={NUMBERS.includes(head)}>
              <FormattedMessage id={`rain.head.${head}`} />
            </Head>
          ))}
        </tr>
      }
      foot={
        known.length > 1 && (
          <tr>
            <td colSpan={HEADS.length}>
              <FormattedMessage id="rain.sum" values={{ unknown: pauses.length - known.length }} />
            </td>
            <Num>{volume(known.reduce((sum, litres) => sum + litres, 0))}</Num>
          </tr>
        )
      }
    >
      {pauses.map((pause) => (
        <PauseRow
          key={pause.controllerId}
          pause={pause}
          isChosen={chosen.has(pause.controllerId)}
          onToggle={() => toggle(pause.controllerId)}
        />
      ))}
    </Table>
  );
}

interface RowProps {
  readonly pause: PauseRowFragment;
  readonly isChosen: boolean;
  readonly onToggle: () => void;
}

function PauseRow({ pause, isChosen, onToggle }: RowProps) {
  const intl = useIntl();
  const { figureOf, day, quantity } = useFormats();
  const { volume } = useSays();
  const { property, controller, rainMm, lastRainOn, waterAgainOn, days, keptLitres } = pause;
  const head = (of: (typeof HEADS)[number]): string => intl.formatMessage({ id: `rain.head.${of}` });
  return (
    <tr>
      <td>
        <input
          type="checkbox"
          aria-label={intl.formatMessage({ id: 'rain.choose' }, { controller: controller.name, property: property.name })}
          checked={isChosen}
          onChange={onToggle}
        />
      </td>
      <td>
        <Link to={paths.property(property.id)}>{property.name}</Link> <span className="soft">{controller.name}</span>
        <OrderThere order={pause.order ?? null} />
      </td>
      <Num head={head('rain')}>
        {quantity('depth', rainMm)}
        <span className="line soft">
          <FormattedMessage id="rain.lastOn" values={{ day: day(lastRainOn) }} />
        </span>
      </Num>
      <td data-head={head('until')}>
        <b className="when">{day(waterAgainOn)}</b>
        <span className="line soft">
          <FormattedMessage id="rain.days" values={{ days }} />
        </span>
      </td>
      <td>
        <WhyThen pause={pause} />
      </td>
      <Num head={head('kept')}>{keptLitres === null || keptLitres === undefined ? figureOf('volume', null) : volume(keptLitres)}</Num>
    </tr>
  );
}

/** Words of the server that hold a blank, as messages choose by them. */
const BECAUSE: Readonly<Record<string, string>> = { 'common practice': 'practice', 'root zone': 'roots' };

/** Why then and no later; and why nobody has to go. */
function WhyThen({ pause: { because, firstZone, pausesItself, pausedUntil } }: { readonly pause: PauseRowFragment }) {
  const intl = useIntl();
  const { moment } = useFormats();
  return (
    <>
      {pausesItself && (
        <span className="line">
          <b>{intl.formatMessage({ id: 'rain.itself' }, { why: pausesItself, until: pausedUntil ? moment(pausedUntil) : 'none' })}</b>
        </span>
      )}
      <FormattedMessage id="rain.because" values={{ because: BECAUSE[because] ?? because, zone: firstZone }} />
    </>
  );
}

/** The order that is there already, and who has it. */
function OrderThere({ order }: { readonly order: PauseRowFragment['order'] }) {
  const { word } = useSays();
  const { day } = useFormats();
  if (!order) return null;
  const who = order.crew && order.day ? `: ${order.crew.name}, ${day(order.day)}` : '';
  return (
    <span className="line soft">
      <FormattedMessage id="rain.ordered" values={{ state: word('workState', order.state) }} />
      {who}
    </span>
  );
}
