import type { Formats } from '../../../../i18n/formats.js';
import type { FileMeaning, FileProblem, RecognizedFile } from './imports.js';

/** What a person has chosen or typed of one file so far; '' is nothing yet. */
export interface Draft {
  readonly station: string;
  readonly windHeight: string;
  readonly property: string;
  readonly meter: string;
}

/** What is asked before a row is read. */
const QUESTIONS: readonly string[] = ['STATION_NOT_CHOSEN', 'WIND_HEIGHT_NOT_STATED', 'METER_NOT_CHOSEN'];

/** Whether the page asks for what is missing, so that it is nothing wrong in the file. */
export function isQuestion({ code }: FileProblem): boolean {
  return QUESTIONS.includes(code);
}

/** What is known already. */
export function draftOf(file: RecognizedFile, { figureOf }: Formats): Draft {
  return {
    station: file.station ?? '',
    windHeight: file.windHeightM === null ? '' : figureOf('length', file.windHeightM),
    property: file.property ?? '',
    meter: file.meter ?? '',
  };
}

/** What is said of a file. A height that was only shown goes back as it came: what is shown is rounded. */
export function meaningOf(draft: Draft, file: RecognizedFile, formats: Formats): FileMeaning {
  const { station, property, meter, windHeight } = draft;
  const isAsShown = windHeight === draftOf(file, formats).windHeight;
  const windHeightM = isAsShown ? file.windHeightM : formats.typed('length', windHeight);
  return {
    ...(station && { station }),
    ...(property && { property }),
    ...(meter && { meter }),
    ...(file.asksWindHeight && windHeightM !== null && { windHeightM }),
  };
}
