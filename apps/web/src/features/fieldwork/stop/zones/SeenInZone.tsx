import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { Checkbox } from '../../../../ui/forms/Select.js';
import { Counter, Tap, Taps } from '../../../../ui/phone/Taps.js';
import { PhotoButton } from '../../device/PhotoButton.js';
import type { VisitHere } from '../use-visit.js';
import { SEEN_KINDS, type SeenKind, type ZoneNotes } from './use-zone-notes.js';

interface Props {
  readonly seen: ZoneNotes;
  readonly label: string;
  readonly zoneId: string;
  readonly begin: VisitHere['begin'];
}

/** One tap for what was seen; under it how many, whether it was repaired, and a word. */
export function SeenInZone({ seen, label, zoneId, begin }: Props) {
  const intl = useIntl();
  const [open, setOpen] = useState<SeenKind | null>(null);
  const words = (kind: SeenKind): string => intl.formatMessage({ id: `field.seen.${kind}` });
  const kinds: readonly SeenKind[] = [...SEEN_KINDS, 'other'];
  const shown = open ?? kinds.find((kind) => seen.of(kind).count > 0) ?? null;
  const tap = (kind: SeenKind): void => {
    if (seen.of(kind).count === 0) seen.change(kind, { count: 1 });
    setOpen(kind);
  };
  const isShown = shown !== null && (seen.of(shown).count > 0 || open === shown);
  return (
    <div role="group" aria-label={label}>
      <Taps>
        {SEEN_KINDS.map((kind) => (
          <Tap key={kind} words={words(kind)} count={seen.of(kind).count} isOn={seen.of(kind).count > 0} onTap={() => tap(kind)} />
        ))}
      </Taps>
      {shown && isShown && <OneSeen key={shown} kind={shown} seen={seen} zoneId={zoneId} begin={begin} words={words(shown)} />}
      {shown !== 'other' && (
        <p className="after">
          <Button kind="plain" onClick={() => tap('other')}>
            <FormattedMessage id="field.seen.other" />
          </Button>
        </p>
      )}
      {!isShown && (
        <p className="after">
          <PhotoButton begin={begin} kind="seen" of={zoneId} zoneId={zoneId} />
        </p>
      )}
    </div>
  );
}

interface OneProps extends Omit<Props, 'label'> {
  readonly kind: SeenKind;
  readonly words: string;
}

/** How many of it, whether it was repaired, a word and a photo. */
function OneSeen({ kind, words, seen, zoneId, begin }: OneProps) {
  const intl = useIntl();
  const now = seen.of(kind);
  return (
    <>
      <Counter words={words} count={now.count} least={seen.leastOf(kind)} onChange={(count) => seen.change(kind, { count })} />
      <Checkbox
        label={intl.formatMessage({ id: 'field.zones.repaired' })}
        isChecked={now.repaired}
        onChange={(repaired) => seen.change(kind, { repaired })}
      />
      <TextField
        label={intl.formatMessage({ id: 'field.zones.word' })}
        isOptional
        value={now.word}
        onChange={(word) => seen.change(kind, { word })}
      />
      <p className="after">
        <PhotoButton begin={begin} kind="seen" of={`${zoneId} ${kind}`} zoneId={zoneId} noteKind={kind} />
      </p>
    </>
  );
}
