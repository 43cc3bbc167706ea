import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import type { BoardDayFragment } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useMaskedList } from '../../../../page/use-masked.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { EmptyState, ErrorState } from '../../../../ui/states/States.js';
import type { BoardShape, BoardStop } from './board.js';
import { boardDay, BoardDay } from './BoardDay.js';
import { MoveDialog } from './MoveDialog.js';
import { useCarry } from './use-carry.js';
import { useReplan } from '../planning/use-replan.js';

interface Crew {
  readonly id: string;
  readonly name: string;
}

interface Props {
  readonly days: readonly FragmentType<BoardDayFragment>[];
  readonly crews: readonly Crew[];
  readonly today: string;
  readonly move: string | null;
  readonly onMove: (stopId: string) => void;
  readonly onClose: () => void;
}

/** Days down, crews across. A stop is carried by mouse, by keys, or by its own dialog. */
export function MonthBoard({ days: masked, crews, today, move, onMove, onClose }: Props) {
  const intl = useIntl();
  const all = useMaskedList(boardDay, masked);
  const carry = useCarry((id) => crews.find((crew) => crew.id === id)?.name ?? '');
  const replan = useReplan();
  if (crews.length === 0) return <NoCrews />;
  const days = all.filter(({ day, stops }) => day >= today || stops.length > 0);
  const dates = [...new Set(days.map(({ day }) => day))].sort();
  const dayOf = (crewId: string, date: string) => days.find(({ crew, day }) => crew.id === crewId && day === date);
  const shape: BoardShape = { crewIds: crews.map(({ id }) => id), days: dates, countOf: (id, date) => dayOf(id, date)?.stops.length ?? 0 };
  const stops = days.flatMap(stopsOf);
  const found = stops.find(({ id }) => id === move) ?? null;
  return (
    <>
      {(carry.problem ?? replan.problem) ? <ErrorState problem={carry.problem ?? replan.problem} /> : null}
      <p className="soft board-how" id="board-how">
        <FormattedMessage id="monthPlan.how" />
      </p>
      <div className="scroll">
        <table className="board" aria-describedby="board-how">
          <caption className="vh">{intl.formatMessage({ id: 'monthPlan.board' })}</caption>
          <CrewHeads crews={crews} />
          <tbody>
            {dates.map((date) => (
              <tr key={date} className={rowClass(date, today, dates)}>
                <DayHead date={date} />
                {crews.map(({ id, name }) => (
                  <BoardDay
                    key={id}
                    day={dayOf(id, date) ?? null}
                    crew={{ id, name }}
                    date={date}
                    stops={stops.filter((stop) => stop.crewId === id && stop.day === date)}
                    board={{ shape, all: stops, carry, isPast: date < today, onMove }}
                    onReplan={date === today ? () => void replan.run(id) : null}
                    isReplanning={replan.isBusy}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <MoveDialog
        name={found?.name ?? null}
        usual={found}
        crews={crews}
        problem={carry.problem}
        isBusy={carry.isBusy}
        onClose={onClose}
        onSend={async (to) => {
          if (found && (await carry.run(found, to))) onClose();
        }}
      />
    </>
  );
}

/** Today, and the first day of each week, stand out. */
function rowClass(date: string, today: string, dates: readonly string[]): string | undefined {
  const before = dates[dates.indexOf(date) - 1];
  const isWeek = before !== undefined && weekdayOf(date) < weekdayOf(before);
  return [date === today ? 'is-today' : '', isWeek ? 'is-week' : ''].filter(Boolean).join(' ') || undefined;
}

/** Monday 0 to Sunday 6. */
const weekdayOf = (date: string): number => (new Date(`${date}T12:00:00Z`).getUTCDay() + 6) % 7;

/** Thu 24: the month stands above the board; to a screen reader the day is said in full. */
function DayHead({ date }: { readonly date: string }) {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const noon = `${date}T12:00:00Z`;
  return (
    <th scope="row">
      <span aria-hidden="true">
        {sentenceCase(intl.formatDate(noon, { weekday: 'short', timeZone: 'UTC' }))} {Number(date.slice(-2))}
      </span>
      <span className="vh">{dayInWords(date)}</span>
    </th>
  );
}

function NoCrews() {
  const intl = useIntl();
  return (
    <EmptyState
      sentence={intl.formatMessage({ id: 'routes.noCrews' })}
      action={<ButtonLink to="/setup/crews">{intl.formatMessage({ id: 'routes.toCrews' })}</ButtonLink>}
    >
      <FormattedMessage id="routes.noCrewsHow" />
    </EmptyState>
  );
}

const CrewHeads = ({ crews }: { readonly crews: readonly Crew[] }) => (
  <thead>
    <tr>
      <th scope="col">
        <FormattedMessage id="routes.day" />
      </th>
      {crews.map(({ id, name }) => (
        <th key={id} scope="col">
          {name}
        </th>
      ))}
    </tr>
  </thead>
);

const stopsOf = ({ crew, day, stops }: BoardDayFragment): readonly BoardStop[] =>
  stops.map(({ stop }, at) => ({
    id: stop.id,
    version: stop.version,
    locked: stop.locked,
    name: stop.property.name,
    crewId: crew.id,
    day,
    position: at + 1,
  }));
