import { type DragEvent, useState } from 'react';
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
        }
      }
    }
    leavesMinute
    homeMinute
    driveMinutes
    workMinutes
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
  readonly board: Omit<Board, 'isPast'> & { readonly isPast: boolean };
}

/** One crew's day: its stops, what it amounts to, and what of it does not fit. */
export function BoardDay({ day, crew, date, stops, board }: Props) {
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
      className={[isOver ? 'is-over' : '', day?.works === false || !day ? 'is-off' : ''].filter(Boolean).join(' ') || undefined}
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
        <DayLine day={day} stops={stops} />
      ) : (
        !day?.works && (
          <span className="soft xs">
            <FormattedMessage id="monthPlan.off" />
          </span>
        )
      )}
    </td>
  );
}

function DayLine({ day, stops }: { readonly day: BoardDayFragment; readonly stops: readonly BoardStop[] }) {
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
          }}
        />{' '}
        <Link to={sheetPath(day.day, day.crew.id)}>
          <FormattedMessage id="monthPlan.sheet" />
        </Link>
      </p>
      {day.says.map((reason, at) => (
        <p key={at} className="xs clay misfit">
          <b>{intl.formatMessage({ id: 'monthPlan.misfit' })}</b> {misfit(reason, nameOf(reason.details))}
        </p>
      ))}
    </>
  );
}
