import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { TextAreaField } from '../../../../ui/forms/Field.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import type { StepProps } from '../step-props.js';
import { ClosedStop } from './ClosedStop.js';
import { isEnded } from './order-end.js';
import { OrderEnd } from './OrderEnd.js';
import { useClosing } from './use-closing.js';

export const doneStop = graphql(`
  fragment DoneStop on Stop {
    id
    route {
      id
      stops {
        id
        position
        property {
          id
          name
        }
        visit {
          id
          closedAt
        }
      }
    }
    visit {
      id
      version
      arrivedAt
      closedAt
      doneNote
      leftNote
    }
    workOrders {
      id
      version
      kind
      what
      state
      doneNote
      finding {
        id
        state
      }
    }
  }
`);

/** The end of a stop: what was done, what is left for another day, how long it took, and where to go next. */
export function DoneStep({ stop: masked, frame, now, sending, visit: { visit, begin } }: StepProps) {
  const intl = useIntl();
  const { minutes, time } = useFormats();
  const stop = useMasked(doneStop, masked);
  const closing = useClosing({ stop, now, begin, send: sending.send });
  const { draft, change, changeOrder } = closing;
  const next = nextStop(stop);
  if (stop.visit?.closedAt && !closing.isAgain)
    return (
      <ClosedStop
        visit={{ ...stop.visit, closedAt: stop.visit.closedAt }}
        next={next}
        frame={frame}
        sending={sending}
        onAgain={closing.again}
      />
    );
  const onSite = visit ? (now().getTime() - Date.parse(visit.arrivedAt)) / 60_000 : null;
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine sending={sending} />}
      actions={
        <>
          <ButtonLink kind="plain" to={stopPath(stop.id, 'zones')}>
            <FormattedMessage id="field.step.zones" />
          </ButtonLink>
          <Button kind="main" isBusy={sending.underWay > 0} onClick={() => void closing.close()}>
            <FormattedMessage id="field.done.close" />
          </Button>
        </>
      }
    >
      <h1>
        <FormattedMessage id="field.done.title" values={{ count: stop.workOrders.filter(({ state }) => !isEnded(state)).length }} />
      </h1>
      <p className="where">
        {visit && onSite !== null ? (
          <FormattedMessage id="field.done.onSite" values={{ time: time(visit.arrivedAt), minutes: minutes(onSite) }} />
        ) : (
          <FormattedMessage id="field.done.notArrived" />
        )}
      </p>
      {closing.words && (
        <p className="problem" role="alert">
          {closing.words}
        </p>
      )}
      {closing.problem ? <ErrorState problem={closing.problem} onRetry={() => void closing.close()} /> : null}
      <div className="stack">
        {stop.workOrders.map((order) => (
          <OrderEnd key={order.id} order={order} end={draft.orders[order.id] ?? null} onChange={(end) => changeOrder(order.id, end)} />
        ))}
        <TextAreaField
          label={intl.formatMessage({ id: 'field.done.doneNote' })}
          isOptional
          value={draft.doneNote}
          onChange={(doneNote) => change({ doneNote })}
        />
        <TextAreaField
          label={intl.formatMessage({ id: 'field.done.leftNote' })}
          isOptional
          value={draft.leftNote}
          onChange={(leftNote) => change({ leftNote })}
        />
      </div>
    </PhoneFrame>
  );
}

interface Around {
  readonly id: string;
  readonly route: {
    readonly stops: readonly {
      readonly id: string;
      readonly property: { readonly name: string };
      readonly visit?: { readonly closedAt?: string | null } | null;
    }[];
  };
}

/** The next stop that nobody has closed: the one after this, else one that was passed over. */
function nextStop({ id, route: { stops } }: Around): { readonly id: string; readonly name: string } | null {
  const at = stops.findIndex((stop) => stop.id === id);
  const found = [...stops.slice(at + 1), ...stops.slice(0, at)].find((stop) => !stop.visit?.closedAt);
  return found ? { id: found.id, name: found.property.name } : null;
}
