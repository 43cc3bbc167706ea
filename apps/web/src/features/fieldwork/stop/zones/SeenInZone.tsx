import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { TextField } from '../../../../ui/forms/Field.js';
import { Checkbox } from '../../../../ui/forms/Select.js';
import { Counter, Tap, Taps } from '../../../../ui/phone/Taps.js';
import { PhotoButton } from '../../device/PhotoButton.js';
import type { VisitHere } from '../use-visit.js';
import { SEEN_KINDS, type Seen, type SeenKind, type ZoneNotes } from './use-zone-notes.js';

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
    // What has no name of its own says nothing before its word.
    if (seen.of(kind).count === 0 && kind !== 'other') seen.change(kind, { count: 1 });
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
  const isSaid = now.count > 0;
  return (
    <>
      {isSaid && <Counter words={words} count={now.count} least={seen.leastOf(kind)} onChange={(count) => seen.change(kind, { count })} />}
      {isSaid && (
        <Checkbox
          label={intl.formatMessage({ id: 'field.zones.repaired' })}
          isChecked={now.repaired}
          onChange={(repaired) => seen.change(kind, { repaired })}
        />
      )}
      <WordField kind={kind} word={now.word} onWord={(text) => seen.change(kind, changeOf(now, text))} />
      {isSaid && (
        <p className="after">
          <PhotoButton begin={begin} kind="seen" of={`${zoneId} ${kind}`} zoneId={zoneId} noteKind={kind} />
        </p>
      )}
    </>
  );
}

/** A word makes one of what had no name. */
const changeOf = ({ count }: Seen, word: string): Partial<Seen> => ({ word, ...(count === 0 && word.trim() !== '' && { count: 1 }) });

interface WordProps {
  readonly kind: SeenKind;
  readonly word: string;
  readonly onWord: (word: string) => void;
}

/** The letters are the field's own while they are typed: what comes back from the phone, however late, takes none away. */
function WordField({ kind, word, onWord }: WordProps) {
  const intl = useIntl();
  const [typed, setTyped] = useState<string | null>(null);
  const [isLeft, setLeft] = useState(false);
  // Left, and there: from now on it is what the phone holds.
  if (isLeft && typed === word) setTyped(null);
  return (
    <TextField
      label={intl.formatMessage({ id: 'field.zones.word' })}
      isOptional={kind !== 'other'}
      value={typed ?? word}
      onChange={(text) => {
        setLeft(false);
        setTyped(text);
        onWord(text);
      }}
      onBlur={() => setLeft(true)}
    />
  );
}
