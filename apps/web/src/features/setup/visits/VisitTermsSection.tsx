import type { FragmentType } from '@apollo/client';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { VisitTermsOfPropertyFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useMasked } from '../../../page/use-masked.js';
import { clockInWords } from '../../../page/values/minute-of-day.js';
import { Dialog } from '../../../ui/dialogs/Dialog.js';
import { Button } from '../../../ui/forms/Button.js';
import { Section } from '../../../ui/frame/Section.js';
import { weekdaysInWords } from '../things/fields/weekdays.js';
import type { ThingsPlace } from '../urls.js';
import { VisitTermsForm } from './VisitTermsForm.js';

const visitTermsOfProperty = graphql(`
  fragment VisitTermsOfProperty on Property {
    id
    name
    visitTerms {
      version
      everyDays
      visitMinutes
      skills
      hours {
        kind
        weekdays
        fromMinute
        untilMinute
      }
    }
  }
`);

const VISITS = 'visits';

interface Props {
  readonly property: FragmentType<VisitTermsOfPropertyFragment>;
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
}

/** How often a property is visited and when it may be: what the month's plan is made from. */
export function VisitTermsSection({ property: masked, place, onPlace }: Props) {
  const intl = useIntl();
  const { id, name, visitTerms } = useMasked(visitTermsOfProperty, masked);
  const terms = visitTerms ?? null;
  const close = (): void => onPlace({ kind: null });
  return (
    <Section
      heading={intl.formatMessage({ id: terms?.everyDays ? 'setup.visits.every' : 'setup.visits.none' }, { days: terms?.everyDays })}
    >
      <TermsInWords terms={terms} />
      <div className="end-line before-part">
        <Button onClick={() => onPlace({ kind: VISITS })}>
          <FormattedMessage id="setup.visits.change" />
        </Button>
      </div>
      <Dialog isOpen={place.kind === VISITS} heading={intl.formatMessage({ id: 'setup.visits.of' }, { name })} onClose={close}>
        {place.kind === VISITS && <VisitTermsForm propertyId={id} terms={terms} onEnd={close} />}
      </Dialog>
    </Section>
  );
}

function TermsInWords({ terms }: { readonly terms: VisitTermsOfPropertyFragment['visitTerms'] | null }) {
  const intl = useIntl();
  const { time, minutes } = useFormats();
  if (!terms)
    return (
      <p className="soft before-part">
        <FormattedMessage id="setup.visits.how" />
      </p>
    );
  const { visitMinutes, skills, hours } = terms;
  const lines = [
    visitMinutes ? intl.formatMessage({ id: 'setup.visits.takes' }, { minutes: minutes(visitMinutes) }) : null,
    skills.length > 0 ? intl.formatMessage({ id: 'setup.visits.needs' }, { skills: skills.join(', ') }) : null,
    ...hours.map(({ kind, weekdays, fromMinute, untilMinute }) =>
      intl.formatMessage(
        { id: kind === 'closed' ? 'setup.visits.closedLine' : 'setup.visits.openLine' },
        { days: weekdaysInWords(intl, weekdays), from: clockInWords(time, fromMinute), until: clockInWords(time, untilMinute) },
      ),
    ),
  ].filter((line) => line !== null);
  return (
    <ul className="plain-lines before-part">
      {lines.map((line) => (
        <li key={line}>{line}</li>
      ))}
    </ul>
  );
}
