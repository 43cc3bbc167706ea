import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Button, ButtonLink } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { NumberPad } from '../../../../ui/phone/NumberPad.js';
import { PhoneFrame } from '../../../../ui/phone/PhoneFrame.js';
import { SentLine } from '../../device/SentLine.js';
import { stopPath } from '../../urls.js';
import { type CansInHand, type CansTold, useCansTest } from './use-cans-test.js';
import type { TestProps } from './zone-test.js';

/** How evenly a zone waters, by cans: what each caught, typed one after the other. */
export function CansTest({ around, ...test }: TestProps) {
  const cans = useCansTest(test);
  const [isAgain, setAgain] = useState(false);
  const { frame, stopId } = test;
  const isBegun = cans.draft.catches.length > 0 || cans.draft.typed !== '';
  const kept = isAgain || isBegun ? null : cans.kept;
  const save = async (): Promise<void> => {
    await cans.save();
    setAgain(false);
  };
  const actions = kept ? (
    <>
      <Button kind="plain" onClick={() => setAgain(true)}>
        <FormattedMessage id="field.tests.again" />
      </Button>
      <ButtonLink kind="main" to={stopPath(stopId, 'tests')}>
        <FormattedMessage id="field.tests.toZones" />
      </ButtonLink>
    </>
  ) : (
    <CansActions cans={cans} stopId={stopId} onSave={() => void save()} />
  );
  return (
    <PhoneFrame {...frame} status={<SentLine />} actions={actions}>
      {around(
        kept ? <Told told={kept} isKept /> : <CansForm cans={cans} isBegun={cans.draft.catches.length > 0} />,
        cans.draft.catches.length > 0,
      )}
    </PhoneFrame>
  );
}

interface ActionsProps {
  readonly cans: CansInHand;
  readonly stopId: string;
  readonly onSave: () => void;
}

/** The next can, large; Save when there are enough to tell something. */
function CansActions({ cans: { draft, change, told }, stopId, onSave }: ActionsProps) {
  const number = draft.catches.length + 1;
  const add = (): void => {
    if (draft.typed !== '') change({ catches: [...draft.catches, draft.typed], typed: '' });
  };
  return (
    <>
      {told ? (
        <Button kind="plain" onClick={onSave}>
          <FormattedMessage id="field.tests.save" />
        </Button>
      ) : (
        <ButtonLink kind="plain" to={stopPath(stopId, 'tests')}>
          <FormattedMessage id="field.tests.zones" />
        </ButtonLink>
      )}
      <Button kind="main" onClick={add}>
        <FormattedMessage id={draft.typed === '' ? 'field.cans.type' : 'field.cans.next'} values={{ number }} />
      </Button>
    </>
  );
}

function CansForm({ cans: { draft, change, told }, isBegun }: { readonly cans: CansInHand; readonly isBegun: boolean }) {
  const intl = useIntl();
  const { unitOf } = useFormats();
  const take = (at: number): void => change({ catches: draft.catches.filter((_, place) => place !== at), typed: draft.catches[at] ?? '' });
  return (
    <>
      {isBegun ? (
        told ? (
          <Told told={told} />
        ) : (
          <p className="judged" role="status">
            <FormattedMessage id="field.cans.tooFew" />
          </p>
        )
      ) : (
        <p className="where">
          <FormattedMessage id="field.cans.how" />
        </p>
      )}
      <NumberPad
        name={intl.formatMessage({ id: 'field.cans.can' }, { number: draft.catches.length + 1 })}
        value={draft.typed}
        onChange={(typed) => change({ typed })}
        unit="ml"
      />
      {draft.catches.length > 0 && (
        <ol className="cans">
          {draft.catches.map((caught, at) => (
            // A can has no name but its place.
            // biome-ignore lint/suspicious/noArrayIndexKey: the place is the can
            <li key={at}>
              <button
                type="button"
                className="tap"
                onClick={() => take(at)}
                aria-label={intl.formatMessage({ id: 'field.cans.change' }, { number: at + 1, caught })}
              >
                {caught}
              </button>
            </li>
          ))}
        </ol>
      )}
      <div className="stack">
        <TextField
          label={intl.formatMessage({ id: 'field.cans.minutes' })}
          isOptional
          inputMode="decimal"
          value={draft.minutes}
          onChange={(minutes) => change({ minutes })}
        />
        <TextField
          label={intl.formatMessage({ id: 'field.cans.mouth' }, { unit: unitOf('depth') })}
          isOptional
          inputMode="decimal"
          value={draft.mouth}
          onChange={(mouth) => change({ mouth })}
        />
      </div>
    </>
  );
}

interface ToldProps {
  readonly told: CansTold & { readonly testedAt?: string };
  readonly isKept?: boolean;
}

function Told({ told: { cans, uniformity, rateMmPerH, isEnough, testedAt }, isKept = false }: ToldProps) {
  const { percent, quantity, time } = useFormats();
  return (
    <p className="judged" role="status">
      <FormattedMessage
        id="field.cans.told"
        values={{
          cans,
          evenness: <b key="evenness">{percent(uniformity)}</b>,
          rate: rateMmPerH === null ? 'none' : quantity('rate', rateMmPerH),
        }}
      />{' '}
      <FormattedMessage
        id={isKept ? 'field.cans.kept' : 'field.cans.enough'}
        values={{ isEnough: String(isEnough), time: testedAt ? time(testedAt) : '' }}
      />
    </p>
  );
}
