import type { ReactNode } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { WeatherDayRowFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useColumnFigure } from './use-column-figure.js';
import { Num } from '../../../ui/tables/Table.js';
import { DaySays } from './DaySays.js';

graphql(`
  fragment WeatherDayRow on WeatherDay {
    stationId
    day
    tmaxC
    tminC
    rhMaxPercent
    rhMinPercent
    dewPointC
    windMPerS
    solarMjPerM2
    rainMm
    reckonedRainMm
    etoMm
    estimated
    marks {
      value
      effect
      reason
    }
    etoReason
    filling {
      source
      stationName
      days
    }
    rainFromNeighbour
  }
`);

/** One day: a refused value is struck out, an estimated one in italics; the words stand at the end. */
export function WeatherDayRow({ day }: { readonly day: WeatherDayRowFragment }) {
  const formats = useFormats();
  const inColumn = useColumnFigure();
  const isRefused = (field: string): boolean => day.marks.some(({ value, effect }) => value === field && effect === 'refused');
  const struck = (field: string, words: string): ReactNode => (isRefused(field) ? <del>{words}</del> : words);
  const rain = day.rainMm === null ? <i>{inColumn('depth', day.reckonedRainMm)}</i> : struck('rainMm', inColumn('depth', day.rainMm));
  const eto = inColumn('depth', day.etoMm);
  return (
    <tr>
      <td className="nw">{formats.day(day.day)}</td>
      <Num>{struck('tmaxC', inColumn('temperature', day.tmaxC))}</Num>
      <Num>{struck('tminC', inColumn('temperature', day.tminC))}</Num>
      <Num>
        {struck('rhMaxPercent', formats.number(day.rhMaxPercent))} / {struck('rhMinPercent', formats.number(day.rhMinPercent))}
      </Num>
      <Num>{struck('dewPointC', inColumn('temperature', day.dewPointC))}</Num>
      <Num>{struck('windMPerS', inColumn('speed', day.windMPerS))}</Num>
      <Num>{struck('solarMjPerM2', formats.figure(day.solarMjPerM2, 1))}</Num>
      <Num>{rain}</Num>
      <Num>{day.estimated ? <i>{eto}</i> : eto}</Num>
      <td className="says-cell">
        <DaySays day={day} />
      </td>
    </tr>
  );
}
