import { FormattedMessage, useIntl } from 'react-intl';
import { useViewer } from '../../../session/viewer.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { Section } from '../../../ui/frame/Section.js';
import { CheckUnderWay } from './CheckUnderWay.js';
import { ChooseFiles } from './ChooseFiles.js';
import { RecomputeAll } from './RecomputeAll.js';
import { imports } from './upload/imports.js';
import type { FilesToCheck } from './use-check.js';

/** Files in: looked at before anything is kept. Files out: everything, in the same format. */
export function BringIn({ files }: { readonly files: FilesToCheck }) {
  const intl = useIntl();
  const { organization } = useViewer();
  return (
    <>
      <PageHead
        crumb={organization.name}
        sentence={intl.formatMessage({ id: 'setup.exchange.title' })}
        lede={<FormattedMessage id="setup.exchange.lede" />}
        tab={intl.formatMessage({ id: 'frame.setup' })}
      />
      <CheckUnderWay files={files} />
      <div className="drop-zone">
        <ChooseFiles onFiles={files.onFiles} isBusy={files.isBusy} kind="main" />
        <p className="prose">
          <FormattedMessage id="setup.kinds" />
        </p>
        <p className="prose soft">
          <FormattedMessage id="setup.exchange.names" />
        </p>
      </div>
      <Section heading={intl.formatMessage({ id: 'setup.export.title' })} note={<FormattedMessage id="setup.export.note" />}>
        <a className="btn" href={imports.exportPath} download>
          <FormattedMessage id="setup.export.do" />
        </a>
      </Section>
      <RecomputeAll />
    </>
  );
}
