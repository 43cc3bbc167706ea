import { useRef, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useOutbox, useRoom } from '../../../offline/PhoneProvider.js';
import { Button } from '../../../ui/forms/Button.js';
import { Checkbox } from '../../../ui/forms/Select.js';
import { useField } from './FieldPhone.js';
import { type PictureTaken, placeOfPicture } from './picture/place-of-picture.js';
import { smallPicture } from './picture/small-picture.js';
import { useSave } from './use-save.js';

interface Props {
  readonly begin: () => Promise<string | null>;
  /** What it shows: before, after, meter, controller, seen, other. */
  readonly kind: string;
  /** What it is of, so that the photos of a zone or a meter are counted there. */
  readonly of: string;
  readonly zoneId?: string | null;
  /** What of a zone walk it shows: it becomes a photo of that finding. */
  readonly noteKind?: string | null;
  /** The work that it shows before or after: the client sees it in the report. */
  readonly workOrderId?: string | null;
}

const countWordsOf = (kind: string, workOrderId: string | null) =>
  workOrderId && (kind === 'before' || kind === 'after') ? (`field.photo.${kind}` as const) : 'field.photo.count';

interface ReadPicture {
  readonly picture: ArrayBuffer;
  readonly place: PictureTaken | null;
}

/** The picture made small, which says nothing of its place; and the place where that is wanted and the camera wrote it. */
async function readPicture(file: File, keepsPlace: boolean): Promise<ReadPicture> {
  return { picture: await smallPicture(file), place: keepsPlace ? await placeOfPicture(await file.arrayBuffer()) : null };
}

/** Takes a photo: made small and kept on the phone at once, sent after the words. */
export function PhotoButton({ begin, kind, of, zoneId = null, noteKind = null, workOrderId = null }: Props) {
  const intl = useIntl();
  const save = useSave();
  const { now } = useField().clock;
  const { operations } = useOutbox();
  const input = useRef<HTMLInputElement>(null);
  const [trouble, setTrouble] = useState<'broken' | 'noRoom' | 'noPlace' | null>(null);
  const [keepsPlace, setKeepsPlace] = useState(false);
  const room = useRoom();
  const subject = `photo ${kind} ${of}`;
  const count = operations.filter((one) => one.subject === subject && one.state !== 'refused').length;
  const countWords = countWordsOf(kind, workOrderId);
  const keep = async (file: File): Promise<void> => {
    // What room is left is kept for words.
    if (room?.state === 'full') return setTrouble('noRoom');
    let read: ReadPicture;
    try {
      read = await readPicture(file, keepsPlace);
    } catch (problem) {
      if (!(problem instanceof DOMException)) throw problem;
      return setTrouble('broken');
    }
    const { picture, place } = read;
    setTrouble(keepsPlace && !place ? 'noPlace' : null);
    setKeepsPlace(false);
    const visitId = await begin();
    if (!visitId) return;
    const body = { visitId, kind, takenAt: now().toISOString(), zoneId, noteKind, workOrderId, word: null, ...place };
    const words = intl.formatMessage({ id: 'field.what.photo' });
    await save({ kind: 'photo', payloadVersion: 1, subject, words, body: JSON.stringify(body), hasPicture: true }, { picture });
  };
  const chosen = (file: File | undefined): void => {
    if (file) void keep(file);
    // The same picture chosen again is another photo.
    if (input.current) input.current.value = '';
  };
  return (
    <>
      <input
        ref={input}
        type="file"
        accept="image/jpeg,image/png,image/webp"
        capture="environment"
        hidden
        aria-label={intl.formatMessage({ id: countWords }, { count: 0 })}
        onChange={(event) => chosen(event.target.files?.[0])}
      />
      <Button kind="plain" onClick={() => input.current?.click()}>
        <FormattedMessage id={countWords} values={{ count }} />
      </Button>
      {kind === 'seen' && (
        <Checkbox label={intl.formatMessage({ id: 'field.photo.keepPlace' })} isChecked={keepsPlace} onChange={setKeepsPlace} />
      )}
      {trouble && (
        <p className="problem" role="alert">
          <FormattedMessage id={`field.photo.${trouble}`} />
        </p>
      )}
    </>
  );
}
