import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { Checkbox } from '../../../../ui/forms/Select.js';
import { Counter, Tap, Taps } from '../../../../ui/phone/Taps.js';
import { SEEN_KINDS, type SeenKind, type ZoneNotes } from './use-zone-notes.js';

interface Props {
  readonly seen: ZoneNotes;
  readonly label: string;
}

/** One tap for what was seen; under it how many, whether it was repaired, and a word. */
export function SeenInZone({ seen, label }: Props) {
  const intl = useIntl();
  const [open, setOpen] = useState<SeenKind | null>(null);
  const words = (kind: SeenKind): string => intl.formatMessage({ id: `field.seen.${kind}` });
  const kinds: readonly SeenKind[] = [...SEEN_KINDS, 'other'];
  const shown = open ?? kinds.find((kind) => seen.of(kind).count > 0) ?? null;
  const tap = (kind: SeenKind): void => {
    if (seen.of(kind).count === 0) seen.change(kind, { count: 1 });
    setOpen(kind);
  };
  const now = shown ? seen.of(shown) : null;
  return (
    <div role="group" aria-label={label}>
      <Taps>
        {SEEN_KINDS.map((kind) => (
          <Tap key={kind} words={words(kind)} count={seen.of(kind).count} isOn={seen.of(kind).count > 0} onTap={() => tap(kind)} />
        ))}
      </Taps>
      {shown && now && (now.count > 0 || open === shown) && (
        <>
          <Counter words={words(shown)} count={now.count} least={seen.leastOf(shown)} onChange={(count) => seen.change(shown, { count })} />
          <Checkbox
            label={intl.formatMessage({ id: 'field.zones.repaired' })}
            isChecked={now.repaired}
            onChange={(repaired) => seen.change(shown, { repaired })}
          />
          <TextField
            label={intl.formatMessage({ id: 'field.zones.word' })}
            isOptional
            value={now.word}
            onChange={(word) => seen.change(shown, { word })}
          />
        </>
      )}
      {shown !== 'other' && (
        <p className="after">
          <Button kind="plain" onClick={() => tap('other')}>
            <FormattedMessage id="field.seen.other" />
          </Button>
        </p>
      )}
    </div>
  );
}
