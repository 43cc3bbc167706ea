import type { FragmentType } from '@apollo/client';
import { useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { StopInStepsFragment } from '../../../graphql/__generated__/graphql.js';
import { useAddress } from '../../../page/use-address.js';
import { useMasked } from '../../../page/use-masked.js';
import { usePageTitle } from '../../../ui/frame/PageHead.js';
import { useField } from '../device/FieldPhone.js';
import { dayPath, STEPS, type Step, stopAddress, stopPath } from '../urls.js';
import { ArriveStep } from './arrive/ArriveStep.js';
import { DoneStep } from './done/DoneStep.js';
import { MeterStep } from './meter/MeterStep.js';
import { SettingsStep } from './settings/SettingsStep.js';
import type { StepProps } from './step-props.js';
import { TestsStep } from './tests/TestsStep.js';
import { useVisit } from './use-visit.js';
import { ZonesStep } from './zones/ZonesStep.js';

export const stopInSteps = graphql(`
  fragment StopInSteps on Stop {
    id
    property {
      id
      name
    }
    route {
      id
      day
      crew {
        id
      }
      stops {
        id
        position
      }
    }
    ...VisitedStop
    ...ArriveStop
    ...MeterStop
    ...SettingsStop
    ...ZonesStop
    ...TestsStop
    ...DoneStop
  }
`);

const PAGES: Readonly<Record<Step, (props: StepProps) => React.ReactNode>> = {
  arrive: ArriveStep,
  meter: MeterStep,
  settings: SettingsStep,
  zones: ZonesStep,
  tests: TestsStep,
  done: DoneStep,
};

/** The steps of one stop, with what they share: the visit and the clock. */
export function StopSteps({ stop: masked }: { readonly stop: FragmentType<StopInStepsFragment> }) {
  const intl = useIntl();
  const stop = useMasked(stopInSteps, masked);
  const [{ step, thing }] = useAddress(stopAddress);
  const { clock } = useField();
  const visit = useVisit({ stop, route: stop.route, clock });
  usePageTitle(stop.property.name);
  const number = stop.route.stops.findIndex(({ id }) => id === stop.id) + 1;
  const frame = {
    back: { to: dayPath(stop.route.day), words: intl.formatMessage({ id: 'frame.today' }) },
    place: intl.formatMessage({ id: 'field.stop.place' }, { number, count: stop.route.stops.length }),
    stepsName: intl.formatMessage({ id: 'field.stop.steps' }),
    steps: STEPS.map((name) => ({
      to: stopPath(stop.id, name),
      words: intl.formatMessage({ id: `field.step.${name}` }),
      isHere: name === step,
    })),
  };
  const Page = PAGES[step];
  return <Page stop={stop} thing={thing} frame={frame} now={clock.now} visit={visit} />;
}
