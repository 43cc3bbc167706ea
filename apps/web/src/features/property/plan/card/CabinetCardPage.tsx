import { useQuery } from '@apollo/client/react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, useParams } from 'react-router';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../../page/Fetched.js';
import { NotFoundPage } from '../../../../page/NotFoundPage.js';
import { paths } from '../../../../page/paths.js';
import { namesOf } from '../../../../says/names.js';
import { useViewer } from '../../../../session/viewer.js';
import { Button } from '../../../../ui/forms/Button.js';
import { PageHead } from '../../../../ui/frame/PageHead.js';
import { Section } from '../../../../ui/frame/Section.js';
import { EmptyState } from '../../../../ui/states/States.js';
import { planReason } from '../../../../page/work/plan-reason.js';
import { ProgramsTable } from '../settings/ProgramsTable.js';
import { type Card, cardDocument } from './card-document.js';
import { MinutesOfYear } from './MinutesOfYear.js';
import { PercentsOfYear } from './PercentsOfYear.js';
import { NightOfStarts, WeatherOfCard } from './CardNotes.js';
import { WinterLines } from './WinterLines.js';
import './card.css';

/** The card that stays in a controller's cabinet: programs entered once, twelve months of percent or minutes, winter and spring. */
export function CabinetCardPage() {
  const intl = useIntl();
  const formats = useFormats();
  const { propertyId = '', controllerId = '' } = useParams();
  const { organization } = useViewer();
  const query = useQuery(cardDocument, { variables: { property: propertyId, controller: controllerId } });
  return (
    <Fetched query={query}>
      {({ property, controller }) => {
        const card = controller?.yearCard;
        if (!property || !card || controller.propertyId !== property.id) return <NotFoundPage />;
        const { name, location } = controller;
        const zones = property.zones.filter((zone) => zone.controllerId === controller.id);
        return (
          <div className="cabinet">
            <PageHead
              crumb={<Link to={paths.property(property.id)}>{property.name}</Link>}
              sentence={intl.formatMessage({ id: 'card.title' }, { property: property.name, name })}
              tab={intl.formatMessage({ id: 'card.tab' }, { property: property.name, name })}
              lede={[property.address, location].filter(Boolean).join('. ')}
              actions={
                card.programs.length > 0 && (
                  <Button kind="main" onClick={() => window.print()}>
                    <FormattedMessage id="card.print" />
                  </Button>
                )
              }
            />
            <YearOfCard card={card} zones={zones} />
            <WinterLines frost={card.frost ?? null} />
            <p className="soft">
              {card.months.length > 0 && <WeatherOfCard months={card.months} />}{' '}
              <FormattedMessage id="card.foot" values={{ organization: organization.name, day: formats.dayInWords(organization.today) }} />
            </p>
          </div>
        );
      }}
    </Fetched>
  );
}

interface YearProps {
  readonly card: Card;
  readonly zones: readonly { readonly id: string; readonly name: string; readonly station?: number | null }[];
}

function YearOfCard({ card, zones }: YearProps) {
  const intl = useIntl();
  const formats = useFormats();
  if (card.reason || !card.thirstiest) {
    return (
      <EmptyState sentence={intl.formatMessage({ id: 'card.none' })}>
        {card.reason ? planReason(intl, namesOf({ zones }), card.reason) : null}
      </EmptyState>
    );
  }
  const { shortStations } = card;
  const once = intl.formatMessage({ id: 'card.once' });
  return (
    <>
      <Section heading={once} note={<FormattedMessage id="card.once.note" values={{ month: formats.month(card.thirstiest) }} />}>
        <ProgramsTable label={once} programs={card.programs} />
        <NightOfStarts programs={card.programs} />
        {shortStations.length > 0 && (
          <p className="planned">
            <FormattedMessage
              id="card.short"
              values={{ count: shortStations.length, stations: intl.formatList(shortStations.map(String), { type: 'conjunction' }) }}
            />
          </p>
        )}
      </Section>
      <PercentsOfYear card={card} />
      <MinutesOfYear card={card} zones={zones} />
    </>
  );
}
