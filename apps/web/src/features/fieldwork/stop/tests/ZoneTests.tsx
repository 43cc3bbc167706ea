import { useState } from 'react';
import { useIntl } from 'react-intl';
import { useOutbox } from '../../../../offline/PhoneProvider.js';
import { Tabs } from '../../../../ui/dialogs/Tabs.js';
import { CansTest } from './CansTest.js';
import { FlowTest } from './FlowTest.js';
import { OnRecord } from './ZonesToTest.js';
import { subjectOf, type TestMeter, type TestProps } from './zone-test.js';

interface Props extends Omit<TestProps, 'around'> {
  readonly meters: readonly TestMeter[];
}

type Kind = 'flow' | 'catch';

/** One zone and its tests; what was begun is gone on with. */
export function ZoneTests({ meters, ...test }: Props) {
  const intl = useIntl();
  const { drafts } = useOutbox();
  const hasCans = subjectOf('catch', test.stopId, test.zone.id) in drafts;
  const [kind, setKind] = useState<Kind>(hasCans ? 'catch' : 'flow');
  const { zone } = test;
  const choice = (content: React.ReactNode) => (
    <>
      <p className="where">
        <OnRecord zone={zone} />
      </p>
      <Tabs
        label={intl.formatMessage({ id: 'field.tests.kind' })}
        tabs={(['flow', 'catch'] as const).map((name) => ({ name, words: intl.formatMessage({ id: `field.tests.${name}` }) }))}
        chosen={kind}
        onChoose={setKind}
      >
        {content}
      </Tabs>
    </>
  );
  const around = (content: React.ReactNode, isBegun: boolean) => (
    <>
      <h1>
        {typeof zone.station === 'number'
          ? intl.formatMessage({ id: 'field.zones.title' }, { station: zone.station, name: zone.name })
          : zone.name}
      </h1>
      {isBegun ? content : choice(content)}
    </>
  );
  return kind === 'flow' ? <FlowTest {...test} meters={meters} around={around} /> : <CansTest {...test} around={around} />;
}
