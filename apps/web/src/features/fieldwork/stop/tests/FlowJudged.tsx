import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { FlowTold } from './tested-flow.js';

interface Props {
  readonly told: FlowTold | null;
  /** What stands on the zone's record. [L/min] */
  readonly recorded: number | null;
}

/** The flow as it comes out, beside what is on record, and whether the register tells it finely enough. */
export function FlowJudged({ told, recorded }: Props) {
  const { quantity, minutes } = useFormats();
  if (told === null) return <p className="judged" role="status" />;
  if (told.kind === 'wrong')
    return (
      <p className="judged" role="status">
        <FormattedMessage id="field.flow.wrong" />
      </p>
    );
  const { flow, sd } = told.tested;
  const values = {
    flow: <b key="flow">{quantity('flow', flow)}</b>,
    recorded: recorded === null ? 'none' : quantity('flow', recorded),
    sd: sd === null ? 'none' : quantity('flow', sd),
    needed: told.minutesNeeded === null ? 'none' : minutes(Math.ceil(told.minutesNeeded)),
  };
  return (
    <p className="judged" role="status">
      <FormattedMessage id={flow > 0 ? 'field.flow.told' : 'field.flow.still'} values={values} />{' '}
      {flow > 0 && !told.isEnough && <FormattedMessage id="field.flow.tooShort" values={values} />}
    </p>
  );
}
