import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { useViewer } from '../../../session/viewer.js';
import { ButtonLink } from '../../../ui/forms/Button.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { StaffGauge } from '../../../ui/gauge/StaffGauge.js';
import { NEW, setupPaths } from '../urls.js';
import { CheckUnderWay } from './CheckUnderWay.js';
import { ChooseFiles } from './ChooseFiles.js';
import type { FilesToCheck } from './use-check.js';

interface Props {
  readonly files: FilesToCheck;
  readonly hasDemo: boolean;
}

const LISTS = ['allowed', 'needed', 'programmed', 'metered'] as const;
const NOTHING = { litres: null, sdLitres: null };
const EMPTY = {
  allowed: NOTHING,
  needed: NOTHING,
  programmed: NOTHING,
  metered: NOTHING,
  landscapeGap: NOTHING,
  settingsGap: NOTHING,
  unexplainedGap: NOTHING,
  aboveAllowed: NOTHING,
};

/** Nothing here yet: each kind of list that the office has gives one mark of the gauge. */
export function FirstRun({ files, hasDemo }: Props) {
  const intl = useIntl();
  const { organization } = useViewer();
  return (
    <>
      <PageHead
        crumb={intl.formatMessage({ id: 'setup.first.crumb' }, { organization: organization.name })}
        sentence={intl.formatMessage({ id: 'setup.first.title' })}
        lede={<FormattedMessage id="setup.first.lede" />}
        tab={intl.formatMessage({ id: 'frame.setup' })}
      />
      <div className="first">
        <div>
          <CheckUnderWay files={files} />
          <Lists files={files} />
          <p className="after-part">
            <FormattedMessage id="setup.kinds" />
          </p>
          <p className="line-of">
            <ButtonLink kind="plain" to={`${setupPaths.properties}?thing=${NEW}`}>
              <FormattedMessage id="setup.first.type" />
            </ButtonLink>
            {hasDemo && (
              <>
                <Link to="/sign-in">
                  <FormattedMessage id="setup.first.demo" />
                </Link>
                <span className="soft">
                  <FormattedMessage id="setup.first.demoHow" />
                </span>
              </>
            )}
          </p>
        </div>
        <StaffGauge
          account={EMPTY}
          size="phone"
          scaleTopLitres={1_500_000}
          missing={Object.fromEntries(LISTS.map((mark) => [mark, intl.formatMessage({ id: `setup.first.${mark}.missing` })]))}
        />
      </div>
    </>
  );
}

/** What the office has, and which of the four volumes it gives. */
function Lists({ files }: { readonly files: FilesToCheck }) {
  const intl = useIntl();
  return (
    <table className="bring">
      <thead>
        <tr>
          <th scope="col">
            <FormattedMessage id="setup.first.have" />
          </th>
          <th scope="col">
            <FormattedMessage id="setup.first.gives" />
          </th>
          <th scope="col">
            <span className="vh">
              <FormattedMessage id="setup.choose" />
            </span>
          </th>
        </tr>
      </thead>
      <tbody>
        {LISTS.map((mark, at) => (
          <tr key={mark}>
            <td>
              <h3>{intl.formatMessage({ id: `setup.first.${mark}` })}</h3>
              <p className="soft">{intl.formatMessage({ id: `setup.first.${mark}.what` })}</p>
            </td>
            <td>
              <b>{intl.formatMessage({ id: `gauge.${mark}` })}</b>
            </td>
            <td>
              <ChooseFiles
                onFiles={files.onFiles}
                isBusy={files.isBusy}
                kind={at === 0 ? 'main' : 'usual'}
                of={intl.formatMessage({ id: `setup.first.${mark}` })}
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
