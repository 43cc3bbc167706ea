import { FormattedMessage, useIntl } from 'react-intl';
import { Section } from '../../../../ui/frame/Section.js';
import type { Card } from './card-document.js';

const SEASONS = [
  { heading: 'card.winter.heading', lines: ['card.winter.shut', 'card.winter.off', 'card.winter.drain', 'card.winter.air'] },
  { heading: 'card.spring.heading', lines: ['card.spring.open', 'card.spring.walk', 'card.spring.test', 'card.spring.enter'] },
] as const;

/** What is done before frost and after it, with the usual cautions; the months are those in which the station measured frost. */
export function WinterLines({ frost }: { readonly frost: Card['frost'] | null }) {
  const intl = useIntl();
  const months = (frost?.months ?? []).map((month) =>
    intl.formatDate(`2024-${String(month).padStart(2, '0')}-15`, { month: 'long', timeZone: 'UTC' }),
  );
  return (
    <Section
      heading={intl.formatMessage({ id: 'card.winter' })}
      note={
        frost ? (
          <FormattedMessage
            id="card.frost"
            values={{ count: months.length, days: frost.measuredDays, months: intl.formatList(months, { type: 'conjunction' }) }}
          />
        ) : (
          <FormattedMessage id="card.frost.unknown" />
        )
      }
    >
      <div className="cabinet-winter">
        <div className="cabinet-seasons">
          {SEASONS.map(({ heading, lines }) => (
            <div key={heading}>
              <h3>
                <FormattedMessage id={heading} />
              </h3>
              <ul className="notes">
                {lines.map((line) => (
                  <li key={line}>
                    <FormattedMessage id={line} />
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </div>
        <div className="cautions">
          <ul>
            {(['mains', 'air', 'backflow', 'law'] as const).map((caution) => (
              <li key={caution}>
                <FormattedMessage id={`card.caution.${caution}`} />
              </li>
            ))}
          </ul>
        </div>
      </div>
    </Section>
  );
}
