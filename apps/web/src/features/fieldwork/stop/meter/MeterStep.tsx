import { FormattedMessage, useIntl } from 'react-intl';
import { useNavigate } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Tabs } from '../../../../ui/dialogs/Tabs.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import type { StepProps } from '../step-props.js';
import { MeterReading } from './MeterReading.js';

export const meterStop = graphql(`
  fragment MeterStop on Stop {
    id
    property {
      id
      timeZone
      meters {
        id
        name
        retiredAt
        removedOn
        ...MeterToRead
      }
    }
  }
`);

/** The meters of the place, one at a time. */
export function MeterStep({ stop: masked, thing, frame, now, visit }: StepProps) {
  const intl = useIntl();
  const navigate = useNavigate();
  const { id, property } = useMasked(meterStop, masked);
  const meters = property.meters.filter(({ retiredAt, removedOn }) => !retiredAt && !removedOn);
  const meter = meters.find((one) => one.id === thing) ?? meters[0];
  const settings = stopPath(id, 'settings');
  if (!meter)
    return (
      <PhoneFrame
        {...frame}
        status={<SentLine />}
        actions={
          <ButtonLink kind="main" to={settings}>
            <FormattedMessage id="field.meter.toSettings" />
          </ButtonLink>
        }
      >
        <h1>
          <FormattedMessage id="field.meter.none" />
        </h1>
        <p className="where">
          <FormattedMessage id="field.meter.noneHow" />
        </p>
      </PhoneFrame>
    );
  const following = meters[meters.indexOf(meter) + 1];
  const reading = (
    <MeterReading
      key={meter.id}
      meter={meter}
      stopId={id}
      timeZone={property.timeZone}
      frame={frame}
      now={now}
      visit={visit}
      next={following ? { to: stopPath(id, 'meter', following.id), words: following.name } : { to: settings, words: null }}
      switcher={
        meters.length > 1
          ? (content) => (
              <Tabs
                label={intl.formatMessage({ id: 'field.meter.which' })}
                tabs={meters.map(({ id: name, name: words }) => ({ name, words }))}
                chosen={meter.id}
                onChoose={(chosen) => void navigate(stopPath(id, 'meter', chosen), { replace: true })}
              >
                {content}
              </Tabs>
            )
          : (content) => content
      }
    />
  );
  return reading;
}
