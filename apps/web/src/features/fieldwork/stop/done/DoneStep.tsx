import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { TextAreaField, TextField } from '../../../../ui/forms/Field.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { PhotoButton } from '../../device/PhotoButton.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import type { StepProps } from '../step-props.js';
import { ClosedStop } from './ClosedStop.js';
import { MaterialsUsed } from './MaterialsUsed.js';
import { isDecidable } from './order-end.js';
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
      workedMinutes
      materials {
        name
        count
        unit
      }
    }
    workOrders {
      id
      version
      kind
      what
      waterAgainOn
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
export function DoneStep({ stop: masked, frame, now, visit }: StepProps) {
  const stop = useMasked(doneStop, masked);
  const closing = useClosing({ stop, now, visit });
  const closedAt = stop.visit?.closedAt;
  if (stop.visit && closedAt && !closing.isAgain)
    return <ClosedStop visit={{ ...stop.visit, closedAt }} next={nextStop(stop)} frame={frame} onAgain={closing.again} />;
  const { draft, change, changeOrder } = closing;
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine />}
      actions={
        <>
          <ButtonLink kind="plain" to={stopPath(stop.id, 'tests')}>
            <FormattedMessage id="field.step.tests" />
          </ButtonLink>
          <Button kind="main" onClick={() => void closing.close()}>
            <FormattedMessage id="field.done.close" />
          </Button>
        </>
      }
    >
      <h1>
        <FormattedMessage id="field.done.title" values={{ count: stop.workOrders.filter(({ state }) => isDecidable(state)).length }} />
      </h1>
      <TimeOnSite arrivedAt={visit.visit?.arrivedAt ?? null} now={now} />
      {closing.words && (
        <p className="problem" role="alert">
          {closing.words}
        </p>
      )}
      <div className="stack">
        {stop.workOrders.map((order) => (
          <OrderEnd
            key={order.id}
            order={order}
            begin={visit.begin}
            end={draft.orders[order.id] ?? null}
            onChange={(end) => changeOrder(order.id, end)}
          />
        ))}
        <StopNotes doneNote={draft.doneNote} leftNote={draft.leftNote} onChange={change} />
        {stop.workOrders.length === 0 && <PhotoButton begin={visit.begin} kind="other" of={stop.id} />}
        <MaterialsUsed materials={draft.materials} onChange={(materials) => change({ materials })} />
        <WorkTime minutes={draft.minutes} onChange={(minutes) => change({ minutes })} />
      </div>
    </PhoneFrame>
  );
}

function TimeOnSite({ arrivedAt, now }: { readonly arrivedAt: string | null; readonly now: () => Date }) {
  const { minutes, time } = useFormats();
  return (
    <p className="where">
      {arrivedAt ? (
        <FormattedMessage
          id="field.done.onSite"
          values={{ time: time(arrivedAt), minutes: minutes((now().getTime() - Date.parse(arrivedAt)) / 60_000) }}
        />
      ) : (
        <FormattedMessage id="field.done.notArrived" />
      )}
    </p>
  );
}

interface TimeProps {
  readonly minutes: string;
  readonly onChange: (minutes: string) => void;
}

function WorkTime({ minutes, onChange }: TimeProps) {
  const intl = useIntl();
  return (
    <TextField
      label={intl.formatMessage({ id: 'field.done.workedMinutes' })}
      hint={intl.formatMessage({ id: 'field.done.workedMinutesHint' })}
      isOptional
      inputMode="decimal"
      value={minutes}
      onChange={onChange}
    />
  );
}

interface NotesProps {
  readonly doneNote: string;
  readonly leftNote: string;
  readonly onChange: (change: { readonly doneNote?: string; readonly leftNote?: string }) => void;
}

function StopNotes({ doneNote, leftNote, onChange }: NotesProps) {
  const intl = useIntl();
  return (
    <>
      <TextAreaField
        label={intl.formatMessage({ id: 'field.done.doneNote' })}
        isOptional
        value={doneNote}
        onChange={(text) => onChange({ doneNote: text })}
      />
      <TextAreaField
        label={intl.formatMessage({ id: 'field.done.leftNote' })}
        isOptional
        value={leftNote}
        onChange={(text) => onChange({ leftNote: text })}
      />
    </>
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
