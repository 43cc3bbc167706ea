import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { FactsOfVisitFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';

export const factsOfVisit = graphql(`
  fragment FactsOfVisit on Visit {
    id
    workedMinutes
    materials {
      name
      count
      unit
    }
    zoneNotes {
      id
    }
    zoneTests {
      id
      zoneId
      kind
      flowLPerMin
      duLq
      onRecord
    }
    photos {
      id
      takenAt
      arrivedAt
    }
  }
`);

interface Props {
  readonly visit: FragmentType<FactsOfVisitFragment>;
  readonly zoneNames: ReadonlyMap<string, string>;
}

/** What a visit took and brought: minutes, materials, what was noted and tested in the zones, photos. */
export function VisitFacts({ visit, zoneNames }: Props) {
  const { minutes, number } = useFormats();
  const { workedMinutes, materials, zoneNotes, zoneTests, photos } = useMasked(factsOfVisit, visit);
  const used = materials.map(({ name, count, unit }) => [number(count, 1), unit, name].filter(Boolean).join(' ')).join(', ');
  return (
    <>
      {typeof workedMinutes === 'number' && (
        <Line>
          <FormattedMessage id="property.visits.minutes" values={{ minutes: minutes(workedMinutes) }} />
        </Line>
      )}
      {used && (
        <Line>
          <FormattedMessage id="property.visits.materials" values={{ used }} />
        </Line>
      )}
      {zoneNotes.length > 0 && (
        <Line>
          <FormattedMessage id="property.visits.zones" values={{ count: zoneNotes.length }} />
        </Line>
      )}
      {zoneTests.map((test) => (
        <Line key={test.id}>
          <TestLine test={test} zone={zoneNames.get(test.zoneId) ?? ''} />
        </Line>
      ))}
      {photos.length > 0 && (
        <Line>
          <Photos photos={photos} />
        </Line>
      )}
    </>
  );
}

const Line = ({ children }: { readonly children: React.ReactNode }) => <span className="xs soft line">{children}</span>;

interface TestProps {
  readonly test: FactsOfVisitFragment['zoneTests'][number];
  readonly zone: string;
}

function TestLine({ test: { kind, flowLPerMin, duLq, onRecord }, zone }: TestProps) {
  const { quantity, percent } = useFormats();
  return (
    <FormattedMessage
      id={kind === 'flow' ? 'property.visits.flow' : 'property.visits.cans'}
      values={{ zone, flow: quantity('flow', flowLPerMin), evenness: percent(duLq), onRecord: String(onRecord) }}
    />
  );
}

function Photos({ photos }: { readonly photos: FactsOfVisitFragment['photos'] }) {
  const intl = useIntl();
  const { moment } = useFormats();
  const here = photos.filter(({ arrivedAt }) => arrivedAt);
  return (
    <>
      {here.map(({ id, takenAt }, at) => (
        <a
          key={id}
          href={`/api/photos/${id}`}
          aria-label={intl.formatMessage({ id: 'property.visits.photoOf' }, { when: moment(takenAt) })}
        >
          <FormattedMessage id="property.visits.photo" values={{ number: at + 1 }} />{' '}
        </a>
      ))}
      {here.length < photos.length && <FormattedMessage id="property.visits.onPhone" values={{ count: photos.length - here.length }} />}
    </>
  );
}
