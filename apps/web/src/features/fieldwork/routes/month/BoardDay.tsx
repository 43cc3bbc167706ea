import { type DragEvent, type ReactNode, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { BoardDayFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { sheetPath } from '../sheet/urls.js';
import type { BoardStop } from './board.js';
import { StopChip } from './StopChip.js';
import { type Board, STOP_TYPE } from './use-carry.js';
import { usePlanWords } from './use-plan-words.js';

export const boardDay = graphql(`
  fragment BoardDay on PlannedDay {
    id
    day
    works
    crew {
      id
    }
    stops {
      beginMinute
      lateMinutes
      visited
      visitDueOn
      stop {
        id
        version
        locked
        property {
          id
          name
        }
        workOrders {
          id
          kind
          what
          waterAgainOn
        }
      }
    }
    leavesMinute
    homeMinute
    driveMinutes
    workMinutes
    waitMinutes
    mostMinutes
    says {
      code
      details
    }
  }
`);

interface Props {
  /** Null where the crew does not work and has nothing. */
  readonly day: BoardDayFragment | null;
  readonly crew: { readonly id: string; readonly name: string };
  readonly date: string;
  readonly stops: readonly BoardStop[];
  readonly board: Board;
  /** Plans the rest of today again; null on any other day. */
  readonly onReplan: (() => void) | null;
  readonly isReplanning: boolean;
}

/** One crew's day: its stops, what it amounts to, and what of it does not fit. */
export function BoardDay({ day, crew, date, stops, board, onReplan, isReplanning }: Props) {
  const intl = useIntl();
  const [isOver, setOver] = useState(false);
  const drop = (event: DragEvent, position: number): void => {
    const stop = board.all.find(({ id }) => id === event.dataTransfer.getData(STOP_TYPE));
    setOver(false);
    if (!stop || board.isPast) return;
    event.preventDefault();
    event.stopPropagation();
    void board.carry.run(stop, { crewId: crew.id, day: date, position, locked: true });
  };
  const takes = (event: DragEvent): boolean => !board.isPast && event.dataTransfer.types.includes(STOP_TYPE);
  return (
    <td
      className={cellClass(day, isOver)}
      onDragOver={(event) => {
        if (!takes(event)) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => drop(event, stops.length + 1)}
    >
      <ol aria-label={intl.formatMessage({ id: 'monthPlan.dayOf' }, { crew: crew.name, stops: stops.length })}>
        {stops.map((stop, at) => (
          <StopChip key={stop.id} stop={stop} timed={day?.stops[at] ?? null} board={board} onDropHere={(event) => drop(event, at + 1)} />
        ))}
      </ol>
      {day && stops.length > 0 ? (
        <DayLine day={day} stops={stops}>
          {onReplan && day.stops.some(({ visited }) => !visited) && <Replan crew={crew.name} isBusy={isReplanning} onReplan={onReplan} />}
        </DayLine>
      ) : (
        <Off day={day} />
      )}
    </td>
  );
}

const cellClass = (day: BoardDayFragment | null, isOver: boolean): string | undefined =>
  [isOver ? 'is-over' : '', day?.works ? '' : 'is-off'].filter(Boolean).join(' ') || undefined;

/** The crew does not work on this day of the week. */
const Off = ({ day }: { readonly day: BoardDayFragment | null }) =>
  day?.works ? null : (
    <span className="soft xs">
      <FormattedMessage id="monthPlan.off" />
    </span>
  );

interface ReplanProps {
  readonly crew: string;
  readonly isBusy: boolean;
  readonly onReplan: () => void;
}

function Replan({ crew, isBusy, onReplan }: ReplanProps) {
  const intl = useIntl();
  return (
    <button
      type="button"
      className="link"
      aria-label={intl.formatMessage({ id: 'monthPlan.replanOf' }, { crew })}
      aria-busy={isBusy}
      onClick={() => !isBusy && onReplan()}
    >
      <FormattedMessage id={isBusy ? 'monthPlan.making' : 'monthPlan.replan'} />
    </button>
  );
}

interface LineProps {
  readonly day: BoardDayFragment;
  readonly stops: readonly BoardStop[];
  readonly children: ReactNode;
}

/** Standing before places that may not be entered yet: less than this is no wait that anybody plans around. */
const LEAST_WAIT_MINUTES = 15;

function DayLine({ day, stops, children }: LineProps) {
  const intl = useIntl();
  const { minutes } = useFormats();
  const { misfit, clock } = usePlanWords();
  const nameOf = (details: unknown): string | null =>
    stops.find(({ id }) => id === (details as { readonly stopId?: string } | null)?.stopId)?.name ?? null;
  return (
    <>
      <p className="xs day-line">
        <FormattedMessage
          id="monthPlan.dayLine"
          values={{
            leaves: clock(day.leavesMinute),
            home: clock(day.homeMinute),
            drive: minutes(day.driveMinutes),
            work: minutes(day.workMinutes),
            most: minutes(day.mostMinutes),
            waits: day.waitMinutes < LEAST_WAIT_MINUTES ? 'none' : minutes(day.waitMinutes),
          }}
        />{' '}
        <Link to={sheetPath(day.day, day.crew.id)}>
          <FormattedMessage id="monthPlan.sheet" />
        </Link>{' '}
        {children}
      </p>
      {day.says.map((reason, at) => (
        <p key={at} className="xs clay misfit">
          <b>{intl.formatMessage({ id: 'monthPlan.misfit' })}</b> {misfit(reason, nameOf(reason.details))}
        </p>
      ))}
    </>
  );
}
