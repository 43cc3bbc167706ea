import { useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { clockInWords } from '../../../../page/values/minute-of-day.js';
import { messageOf } from '../../../../says/saying.js';

interface Told {
  readonly code: string;
  readonly details: unknown;
}

export interface PlanWords {
  /** Why something has no day. */
  readonly why: (reason: Told) => string;
  /** What of a day does not fit. */
  readonly misfit: (reason: Told, name: string | null) => string;
  /** 7:35, from minutes since midnight. */
  readonly clock: (minute: number) => string;
}

/** The sentences of a month's plan. A code that this version does not know stands as it is, never silent. */
export function usePlanWords(): PlanWords {
  const intl = useIntl();
  const { minutes, dayInWords, time } = useFormats();
  const values = (details: unknown) => {
    const {
      workS,
      mostS,
      needsS,
      mostRoomS,
      addedS,
      skills,
      firstDay,
      day,
      minutes: by,
    } = (details ?? {}) as Readonly<Record<string, unknown>>;
    const time = (seconds: unknown): string => minutes(typeof seconds === 'number' ? seconds / 60 : null);
    return {
      work: time(workS),
      most: time(mostS),
      needs: time(needsS),
      room: time(mostRoomS),
      added: time(addedS),
      skills: Array.isArray(skills) ? skills.join(', ') : '',
      hasFirst: String(firstDay !== null && firstDay !== undefined),
      day: typeof day === 'string' ? dayInWords(day) : '',
      isReached: String(typeof by === 'number'),
      by: minutes(typeof by === 'number' ? by : null),
    };
  };
  return {
    why: ({ code, details }) => messageOf({ intl }, `monthPlan.why.${code}`, values(details)) ?? code,
    misfit: ({ code, details }, name) => messageOf({ intl }, `monthPlan.misfit.${code}`, { ...values(details), name: name ?? '' }) ?? code,
    clock: (minute) => clockInWords(time, minute),
  };
}
