import { useFormats } from '../../i18n/LanguageProvider.js';
import { useViewer } from '../../session/viewer.js';
import { localTimeAt } from './local-instant.js';

/** A day and a time on a clock, as two fields hold them. */
export interface DayAndTime {
  readonly day: string;
  readonly time: string;
}

/** Now, on the organization's day, 'YYYY-MM-DDTHH:mm': a demonstration's day stands still, and then its whole day counts. */
export function useDeskNow(): () => string {
  const { timeZone } = useFormats();
  const { today } = useViewer().organization;
  return () => {
    const now = localTimeAt(Date.now(), timeZone);
    return now.startsWith(today) ? now : `${today}T${now.slice(11)}`;
  };
}

export function dayAndTime(localTime: string): DayAndTime {
  const [day = '', time = ''] = localTime.split('T');
  return { day, time };
}

/** The wall time that was typed, 'YYYY-MM-DDTHH:mm'. */
export const localTimeOf = ({ day, time }: DayAndTime): string => `${day}T${time}`;
