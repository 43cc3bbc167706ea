import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { RainPausePageQuery } from '../../graphql/__generated__/graphql.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import { Fetched } from '../../page/Fetched.js';
import { Button } from '../../ui/forms/Button.js';
import { PageHead } from '../../ui/frame/PageHead.js';
import { Footnote } from '../../ui/frame/Section.js';
import { EmptyState } from '../../ui/states/States.js';
import { PausesToGive } from './PausesToGive.js';
import './rain.css';

const rainPauseDocument = graphql(`
  query RainPausePage {
    rainPauseList {
      today
      withoutWeather
      controllers {
        controllerId
        rainMm
        pausesItself
        keptLitres
        ...PauseRow @unmask
      }
    }
    crews {
      id
      name
    }
  }
`);

/** The day after a storm: which controllers can be paused, until when, what that keeps, and the work that makes it so. */
export function RainPausePage() {
  const query = useQuery(rainPauseDocument, { fetchPolicy: 'cache-and-network' });
  return <Fetched query={query}>{(data) => <Pauses data={data} />}</Fetched>;
}

function Pauses({ data: { rainPauseList, crews } }: { readonly data: RainPausePageQuery }) {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const { today, withoutWeather, controllers } = rainPauseList;
  const toGo = controllers.filter(({ pausesItself }) => !pausesItself);
  const themselves = controllers.filter(({ pausesItself }) => pausesItself);
  return (
    <div className="rain">
      <PageHead
        crumb={dayInWords(today)}
        sentence={intl.formatMessage({ id: 'rain.title' }, { count: toGo.length, all: controllers.length })}
        tab={intl.formatMessage({ id: 'rain.tab' })}
        lede={controllers.length > 0 && <FormattedMessage id="rain.lede" />}
        actions={
          controllers.length > 0 && (
            <Button onClick={() => window.print()}>
              <FormattedMessage id="rain.print" />
            </Button>
          )
        }
      />
      {controllers.length === 0 && (
        <EmptyState sentence={intl.formatMessage({ id: 'rain.none' })}>
          <FormattedMessage id="rain.noneHow" />
        </EmptyState>
      )}
      {controllers.length > 0 && <PausesToGive toGo={toGo} themselves={themselves} crews={crews} today={today} />}
      <Footnote>
        <FormattedMessage id="rain.method" values={{ without: withoutWeather }} />
      </Footnote>
    </div>
  );
}
