import type { InputName } from '@rillbook/metering/uncertainty/uncertain-input.js';
import { messageOf, type Saying } from './saying.js';
import { zoneName } from './zone-values.js';

/** Something that a gap is uncertain by: an input, and the zone, controller or meter that it is an input of. */
export interface UncertainInput {
  readonly input: string;
  readonly subjectId: string | null;
}

/** What each input is an input of. The record is complete: a new input of the library does not compile without its words. */
export const inputSubjects: Readonly<Record<InputName, 'zone' | 'controller' | 'meter' | 'weather'>> = {
  area: 'zone',
  plantFactor: 'zone',
  rootStorage: 'zone',
  uniformity: 'zone',
  flow: 'zone',
  precipitationRate: 'zone',
  handVolume: 'zone',
  eto: 'weather',
  rain: 'weather',
  filledWeather: 'weather',
  rainSensor: 'controller',
  settingsFromWeather: 'controller',
  filledSettings: 'controller',
  meter: 'meter',
  registerResolution: 'meter',
  apportioning: 'meter',
  indoor: 'meter',
  filledReadings: 'meter',
};

/** What to measure, and of what, to make a gap surer; an input that this version does not know stands as it is. */
export function surerSentence(saying: Saying, { input, subjectId }: UncertainInput): string {
  const sentence = Object.hasOwn(inputSubjects, input)
    ? messageOf(saying, `surer.${input}`, { subject: subjectOf(saying, inputSubjects[input as InputName], subjectId) })
    : null;
  return sentence ?? input;
}

function subjectOf(saying: Saying, kind: (typeof inputSubjects)[InputName], id: string | null): string {
  if (kind === 'weather') return '';
  if (kind === 'zone') return zoneName(saying, id);
  const name = saying.names.of(id) ?? 'none';
  return saying.intl.formatMessage({ id: kind === 'meter' ? 'surer.meterName' : 'surer.controller' }, { name });
}
