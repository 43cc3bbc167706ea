import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { NamedStation } from '../../../../programs/named-station.js';
import type { GivenSettings } from '../../../../programs/settings-fact.js';
import { Button } from '../../../../ui/forms/Button.js';
import { PlannedBesidePresent } from '../../settings-beside/PlannedBesidePresent.js';
import { LeastToEnter } from './LeastToEnter.js';
import type { LeastToEnter as Least } from '../enter/use-least-to-enter.js';

interface Props {
  readonly found: GivenSettings & { readonly effectiveAt: string };
  readonly least: Least;
  readonly planned: GivenSettings | null;
  readonly stations: readonly NamedStation[];
  readonly onEditFound: () => void;
  readonly onSetAsPlanned: () => void;
}

/** A controller that was found different: the least to enter, and under it what the office had planned before anybody looked. */
export function FoundHere({ found, least, planned, stations, onEditFound, onSetAsPlanned }: Props) {
  const { time } = useFormats();
  return (
    <>
      <p className="where" role="status">
        <FormattedMessage id="field.enter.foundAt" values={{ time: time(found.effectiveAt) }} />
      </p>
      <LeastToEnter least={least} found={found} stations={stations} />
      {planned && (
        <section className="enter">
          <h2>
            <FormattedMessage id="field.enter.planned" />
          </h2>
          <PlannedBesidePresent planned={planned} present={found} stations={stations} canReckon />
          {least.kind === 'enter' && (
            <Button kind="plain" onClick={onSetAsPlanned}>
              <FormattedMessage id="field.settings.setAsPlanned" />
            </Button>
          )}
        </section>
      )}
      <p className="after">
        <Button kind="plain" onClick={onEditFound}>
          <FormattedMessage id="field.enter.foundAgain" />
        </Button>
      </p>
    </>
  );
}
