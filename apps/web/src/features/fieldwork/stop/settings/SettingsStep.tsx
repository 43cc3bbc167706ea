import { FormattedMessage, useIntl } from 'react-intl';
import { useNavigate } from 'react-router';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useMasked } from '../../../../page/use-masked.js';
import { Tabs } from '../../../../ui/dialogs/Tabs.js';
import { ButtonLink } from '../../../../ui/forms/Button.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import { isDecidable } from '../done/order-end.js';
import type { StepProps } from '../step-props.js';
import { ControllerSettings } from './ControllerSettings.js';

export const settingsStop = graphql(`
  fragment SettingsStop on Stop {
    id
    cautions
    workOrders {
      id
      controllerId
      state
      waterAgainOn
    }
    property {
      id
      timeZone
      controllers {
        id
        name
        retiredAt
        ...ControllerToSet
      }
      zones {
        id
        name
        controllerId
        station
        retiredAt
      }
    }
  }
`);

/** The controllers of the place, one at a time: planned beside present. */
export function SettingsStep({ stop: masked, thing, frame, now, visit }: StepProps) {
  const intl = useIntl();
  const navigate = useNavigate();
  const { id, property, cautions, workOrders } = useMasked(settingsStop, masked);
  const controllers = property.controllers.filter(({ retiredAt }) => !retiredAt);
  const controller = controllers.find((one) => one.id === thing) ?? controllers[0];
  const zones = stopPath(id, 'zones');
  if (!controller) return <NoController frame={frame} zones={zones} />;
  const following = controllers[controllers.indexOf(controller) + 1];
  const stations = property.zones
    .filter((zone) => zone.controllerId === controller.id && !zone.retiredAt && typeof zone.station === 'number')
    .map((zone) => ({ station: zone.station ?? 0, name: zone.name }))
    .sort((a, b) => a.station - b.station);
  return (
    <ControllerSettings
      key={controller.id}
      controller={controller}
      stations={stations}
      stopId={id}
      timeZone={property.timeZone}
      waterAgainOn={pauseOf(workOrders, controller.id)}
      hasMains={cautions.includes('mains-voltage')}
      frame={frame}
      now={now}
      visit={visit}
      next={following ? { to: stopPath(id, 'settings', following.id), words: following.name } : { to: zones, words: null }}
      switcher={
        controllers.length > 1
          ? (content) => (
              <Tabs
                label={intl.formatMessage({ id: 'field.settings.which' })}
                tabs={controllers.map(({ id: name, name: words }) => ({ name, words }))}
                chosen={controller.id}
                onChoose={(chosen) => void navigate(stopPath(id, 'settings', chosen), { replace: true })}
              >
                {content}
              </Tabs>
            )
          : (content) => content
      }
    />
  );
}

/** A place whose controllers nobody has put on record: the zones are walked all the same. */
function NoController({ frame, zones }: Pick<StepProps, 'frame'> & { readonly zones: string }) {
  return (
    <PhoneFrame
      {...frame}
      status={<SentLine />}
      actions={
        <ButtonLink kind="main" to={zones}>
          <FormattedMessage id="field.settings.toZones" />
        </ButtonLink>
      }
    >
      <h1>
        <FormattedMessage id="field.settings.none" />
      </h1>
      <p className="where">
        <FormattedMessage id="field.settings.noneHow" />
      </p>
    </PhoneFrame>
  );
}

interface PauseOrder {
  readonly controllerId?: string | null;
  readonly state: string;
  readonly waterAgainOn?: string | null;
}

/** The day until which an order that is still to be done wants the controller paused. */
const pauseOf = (orders: readonly PauseOrder[], controllerId: string): string | null =>
  orders.find((order) => order.controllerId === controllerId && order.waterAgainOn && isDecidable(order.state))?.waterAgainOn ?? null;
