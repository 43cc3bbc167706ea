import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { SetupCrewsQuery } from '../../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../../page/Fetched.js';
import { useAddress } from '../../../../page/use-address.js';
import { clockInWords } from '../../../../page/values/minute-of-day.js';
import { mayDo, useViewer } from '../../../../session/viewer.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { thingsAddress } from '../../urls.js';
import type { Draft } from '../fields/field-spec.js';
import { joined } from '../fields/parts.js';
import { weekdaysInWords } from '../fields/weekdays.js';
import { ThingsSection } from '../list/ThingsSection.js';
import { crew } from '../kinds/crew.js';

const crewsDocument = graphql(`
  query SetupCrews($withMembers: Boolean!) {
    crews {
      ...CrewFields @unmask
      members {
        id
        person {
          id
          name
        }
      }
    }
    members @include(if: $withMembers) {
      id
      role
      person {
        id
        name
      }
    }
  }
`);

/** What a new crew usually is: Monday to Friday, 7:00 to 15:30 with half an hour of rest. */
const USUAL: Draft = {
  workingDays: joined(['1', '2', '3', '4', '5']),
  dayStartsMinute: '07:00',
  dayEndsMinute: '15:30',
  breakMinutes: '30',
};

/** Who, when, and what they can do. */
function useAbout() {
  const intl = useIntl();
  const { time } = useFormats();
  return (one: SetupCrewsQuery['crews'][number] | undefined): string => {
    if (!one) return '';
    const { members, workingDays, dayStartsMinute, dayEndsMinute, skills, startLatitude } = one;
    return [
      members.map(({ person }) => person.name).join(', ') || intl.formatMessage({ id: 'setup.crew.nobody' }),
      intl.formatMessage(
        { id: 'setup.crew.hours' },
        { days: weekdaysInWords(intl, workingDays), from: clockInWords(time, dayStartsMinute), until: clockInWords(time, dayEndsMinute) },
      ),
      ...(skills.length > 0 ? [skills.join(', ')] : []),
      ...(startLatitude === null || startLatitude === undefined ? [intl.formatMessage({ id: 'setup.crew.noStart' })] : []),
    ].join(' · ');
  };
}

/** Who goes together. */
export function CrewsPage() {
  const intl = useIntl();
  const viewer = useViewer();
  const [place, change] = useAddress(thingsAddress);
  const about = useAbout();
  const withMembers = mayDo(viewer, 'manage members');
  const query = useQuery(crewsDocument, { variables: { withMembers }, fetchPolicy: 'cache-and-network' });
  return (
    <Fetched query={query}>
      {({ crews, members }) => {
        const of = new Map(crews.map((one) => [one.id, one]));
        const things = crews.map((one) => ({ ...one, memberIds: one.members.map(({ id }) => id) }));
        // Without the list of members, those that are already with a crew can still be chosen.
        const people = new Map(
          [...crews.flatMap((one) => one.members), ...(members ?? []).filter(({ role }) => role !== 'client')].map((one) => [one.id, one]),
        );
        return (
          <>
            <PageHead sentence={intl.formatMessage({ id: 'setup.crews.title' })} lede={<FormattedMessage id="setup.crews.lede" />} />
            <ThingsSection
              kind={crew}
              things={things}
              choices={{ memberIds: [...people.values()].map(({ id, person }) => ({ value: id, words: person.name })) }}
              nameOf={({ id }) => of.get(id)?.name ?? ''}
              about={({ id }) => about(of.get(id))}
              fixed={USUAL}
              place={place}
              onPlace={change}
              refetch={['SetupCrews']}
            />
          </>
        );
      }}
    </Fetched>
  );
}
