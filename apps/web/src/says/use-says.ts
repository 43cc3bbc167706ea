import { useMemo } from 'react';
import { useIntl } from 'react-intl';
import type { Known } from '../i18n/numbers.js';
import { useFormats } from '../i18n/LanguageProvider.js';
import { findingSentence, otherFinding } from './finding-sentence.js';
import { type Names, noNames } from './names.js';
import { noteSentence } from './note-sentence.js';
import type { Reason } from './reason.js';
import { otherReason, reasonSentence } from './reason-sentence.js';
import { aboutVolume, messageOf, wordOf } from './saying.js';
import { surerSentence, type UncertainInput } from './surer-sentence.js';

export interface Says {
  /** A finding's sentence. */
  readonly finding: (finding: { readonly kind: string; readonly says: Reason }) => string;
  /** Why something is not known, or stands where it stands; a finding's sentence too. */
  readonly reason: (reason: Reason) => string;
  /** The same as part of a drawing or a cell: without capital and full stop. */
  readonly because: (reason: Reason) => string;
  readonly note: (note: Reason) => string;
  /** What to measure, and of what. */
  readonly surer: (input: UncertainInput) => string;
  /** A word of the records: `word('kind', 'stale')`. */
  readonly word: (family: string, word: string) => string;
  /** A volume with its unit, as exact as it deserves. */
  readonly volume: (litres: Known) => string;
}

/** The sentences of findings, reasons and notes in the reader's language and units. `names` should be kept between drawings. */
export function useSays(names: Names = noNames): Says {
  const intl = useIntl();
  const formats = useFormats();
  return useMemo(() => {
    const saying = { intl, formats, names };
    const reason = (told: Reason): string =>
      reasonSentence(saying, told) ?? findingSentence(saying, told) ?? otherReason(saying, told.code);
    return {
      finding: ({ kind, says }) => findingSentence(saying, says) ?? otherFinding(saying, kind),
      reason,
      because: (told) => inside(reason(told)),
      note: (note) => noteSentence(saying, note) ?? messageOf(saying, 'says.note.other', { code: note.code }) ?? note.code,
      surer: (input) => surerSentence(saying, input),
      word: (family, word) => wordOf(intl, family, word),
      volume: (litres) => aboutVolume(formats, litres),
    };
  }, [intl, formats, names]);
}

const inside = (sentence: string): string => (sentence.charAt(0).toLocaleLowerCase() + sentence.slice(1)).replace(/\.$/, '');
