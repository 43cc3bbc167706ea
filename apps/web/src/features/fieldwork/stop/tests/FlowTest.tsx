import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { NumberPad } from '../../../../ui/phone/NumberPad.js';
import { Caution, PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { Tap, Taps } from '../../../../ui/phone/Taps.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import { FlowJudged } from './FlowJudged.js';
import { RunningClock } from './RunningClock.js';
import { type FlowInHand, type KeptFlow, useFlowTest } from './use-flow-test.js';
import type { TestMeter, TestProps } from './zone-test.js';

interface Props extends TestProps {
  readonly meters: readonly TestMeter[];
}

/**
 * The flow of a zone by its meter: a register, the clock, a register; the flow stands there as soon as the last key is down. The clock starts at
 * the glance at the register, which may be typed while the water runs: the seconds of typing would count as flow.
 */
export function FlowTest({ around, meters, ...test }: Props) {
  const flow = useFlowTest({ ...test, meters });
  const [isAgain, setAgain] = useState(false);
  const { frame, stopId, zone } = test;
  const kept = isAgain || flow.draft.before !== '' || flow.phase !== 'before' ? null : flow.kept;
  if (flow.meter === null)
    return (
      <PhoneFrame {...frame} status={<SentLine />} actions={<BackToZones stopId={stopId} />}>
        {around(
          <p className="after">
            <FormattedMessage id="field.flow.noMeter" />
          </p>,
          false,
        )}
      </PhoneFrame>
    );
  const save = async (): Promise<void> => {
    await flow.save();
    setAgain(false);
  };
  const actions = kept ? (
    <>
      <Button kind="plain" onClick={() => setAgain(true)}>
        <FormattedMessage id="field.tests.again" />
      </Button>
      <BackToZones stopId={stopId} />
    </>
  ) : (
    <FlowActions flow={flow} stopId={stopId} onSave={() => void save()} />
  );
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={actions}>
      {around(
        kept ? (
          <KeptFlowTest kept={kept} />
        ) : (
          <FlowInPhase flow={flow} meter={flow.meter} meters={meters} recorded={zone.flowLPerMin ?? null} />
        ),
        flow.phase !== 'before',
      )}
    </PhoneFrame>
  );
}

const BackToZones = ({ stopId }: { readonly stopId: string }) => (
  <ButtonLink kind="main" to={stopPath(stopId, 'tests')}>
    <FormattedMessage id="field.tests.toZones" />
  </ButtonLink>
);

interface PhaseProps {
  readonly flow: FlowInHand;
  readonly meter: TestMeter;
  readonly meters: readonly TestMeter[];
  readonly recorded: number | null;
}

function FlowInPhase({ flow, meter, meters, recorded }: PhaseProps) {
  const intl = useIntl();
  const { draft, phase, change } = flow;
  const pad = (id: 'field.flow.before' | 'field.flow.after', key: 'before' | 'after') => (
    <NumberPad
      key={key}
      name={intl.formatMessage({ id }, { name: meter.name })}
      value={draft[key]}
      onChange={(typed) => change({ [key]: typed })}
      unit={meter.unit}
    />
  );
  if (phase === 'running')
    return (
      <>
        <RunningClock sinceMs={draft.startedMs ?? 0} />
        <Caution>
          <FormattedMessage id="field.flow.pressure" />
        </Caution>
        <p className="where">
          <FormattedMessage id="field.flow.stoodAt" />
        </p>
        {pad('field.flow.before', 'before')}
      </>
    );
  if (phase === 'after')
    return (
      <>
        <p className="where">
          <FormattedMessage id="field.flow.readAfter" values={{ before: draft.before }} />
        </p>
        <FlowJudged told={flow.told} recorded={recorded} />
        {pad('field.flow.after', 'after')}
      </>
    );
  return (
    <>
      <Caution>
        <FormattedMessage id="field.flow.how" />
      </Caution>
      {meters.length > 1 && (
        <Taps>
          {meters.map(({ id, name }) => (
            <Tap key={id} words={name} isOn={id === meter.id} onTap={() => change({ meterId: id })} />
          ))}
        </Taps>
      )}
      {pad('field.flow.before', 'before')}
    </>
  );
}

interface ActionsProps {
  readonly flow: FlowInHand;
  readonly stopId: string;
  readonly onSave: () => void;
}

function FlowActions({ flow: { draft, phase, told, change, begin }, stopId, onSave }: ActionsProps) {
  if (phase === 'before')
    return (
      <>
        <ButtonLink kind="plain" to={stopPath(stopId, 'tests')}>
          <FormattedMessage id="field.tests.zones" />
        </ButtonLink>
        <Button kind="main" onClick={() => change({ startedMs: Date.now() })}>
          <FormattedMessage id="field.flow.start" />
        </Button>
      </>
    );
  const again = (
    <Button kind="plain" onClick={begin}>
      <FormattedMessage id="field.flow.begin" />
    </Button>
  );
  if (phase === 'running')
    return (
      <>
        {again}
        <Button kind="main" onClick={() => draft.before !== '' && change({ stoppedMs: Date.now() })}>
          <FormattedMessage id={draft.before === '' ? 'field.flow.typeFirst' : 'field.flow.stop'} />
        </Button>
      </>
    );
  const isTooShort = told?.kind === 'told' && !told.isEnough;
  return (
    <>
      {isTooShort ? (
        <Button kind="plain" onClick={() => change({ stoppedMs: null, after: '' })}>
          <FormattedMessage id="field.flow.runOn" />
        </Button>
      ) : (
        again
      )}
      <Button kind="main" onClick={onSave}>
        <FormattedMessage id={told === null ? 'field.flow.typeAfter' : 'field.tests.save'} />
      </Button>
    </>
  );
}

function KeptFlowTest({ kept: { testedAt, flowLPerMin, isEnough } }: { readonly kept: KeptFlow }) {
  const { quantity, time } = useFormats();
  return (
    <div role="status">
      <div className="register">
        <b>{quantity('flow', flowLPerMin)}</b>
      </div>
      <p className="judged">
        <FormattedMessage id="field.flow.kept" values={{ time: time(testedAt), isEnough: String(isEnough) }} />
      </p>
    </div>
  );
}
