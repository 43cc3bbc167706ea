import { useIntl } from 'react-intl';
import { messageOf } from '../../../../says/saying.js';

interface Props {
  readonly code: string;
  /** What the company knows of getting in: gate, dog, whom to call. */
  readonly notes?: string | null;
}

/** A caution in plain words; one that this version does not know stands as its code, never silent. */
export function CautionWords({ code, notes = null }: Props) {
  const intl = useIntl();
  if (code === 'access-note' && notes) return notes;
  return messageOf({ intl }, `field.caution.${code}`) ?? code;
}
