import { useQuery } from '@apollo/client/react';
import { useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { useViewer } from '../../../../session/viewer.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import '../../fieldwork.css';
import './month.css';
import { MonthBoard } from './MonthBoard.js';
import { PlanActions } from '../planning/PlanActions.js';
import { SeasonDialog } from '../planning/SeasonDialog.js';
import { TravelNote } from './TravelNote.js';
import { UnplacedList } from './UnplacedList.js';
import { monthPlanAddress } from '../month-urls.js';

export const monthPlanDocument = graphql(`
  query MonthPlan($month: Month!) {
    monthPlan(month: $month) {
      month
      today
      days {
        id
        driveMinutes
        stops {
          stop {
            id
          }
        }
        ...BoardDay
      }
      unplaced {
        id
        ...Unplaced
      }
      travel {
        source
        factor
        kilometresPerHour
        perDriveMinutes
        serverFault
      }
      pace {
        crew {
          id
          name
        }
        factor
        visits
      }
      latest {
        id
        ...LatestPlan
      }
    }
    crews {
      id
      name
    }
    properties {
      id
    }
  }
`);

/** A month of every crew: who goes where on which day, what has no day and why. */
export function MonthPlanPage() {
  const intl = useIntl();
  const { month: inWords, minutes } = useFormats();
  const { today } = useViewer().organization;
  const [place, change] = useAddress(monthPlanAddress);
  const month = place.month ?? today.slice(0, 7);
  const query = useQuery(monthPlanDocument, { variables: { month }, fetchPolicy: 'cache-and-network' });
  const shown = { ...query, data: query.data ?? query.previousData };
  const close = (): void => change({ move: null });
  return (
    <Fetched query={shown}>
      {({ monthPlan: { days, unplaced, travel, pace, latest }, crews, properties }) => (
        <>
          <PageHead
            crumb={sentenceCase(inWords(month))}
            sentence={intl.formatMessage(
              { id: 'monthPlan.title' },
              {
                stops: days.flatMap(({ stops }) => stops).length,
                unplaced: unplaced.length,
                drive: minutes(days.reduce((sum, { driveMinutes }) => sum + driveMinutes, 0)),
              },
            )}
            tab={intl.formatMessage({ id: 'monthPlan.tab' })}
            actions={
              <PlanActions
                month={month}
                latest={latest ?? null}
                onMonth={(next) => change({ month: next })}
                onSeason={() => change({ isSeason: true })}
              />
            }
          />
          <MonthBoard days={days} crews={crews} today={today} move={place.move} onMove={(move) => change({ move })} onClose={close} />
          <UnplacedList
            month={month}
            items={unplaced}
            crews={crews}
            today={today}
            move={place.move}
            onMove={(move) => change({ move })}
            onClose={close}
          />
          <SeasonDialog
            isOpen={place.isSeason}
            month={month}
            propertyIds={properties.map(({ id }) => id)}
            onClose={() => change({ isSeason: false })}
          />
          <TravelNote travel={travel} pace={pace} />
        </>
      )}
    </Fetched>
  );
}
