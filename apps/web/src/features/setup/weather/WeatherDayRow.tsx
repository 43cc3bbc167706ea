import type { ReactNode } from 'react';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { WeatherDayRowFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useColumnFigure } from './use-column-figure.js';
import { DaySays } from './DaySays.js';
import { DAY_VALUES, type DayHeads } from './use-day-heads.js';

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
    reckonedRainSdMm
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

interface Props {
  readonly day: WeatherDayRowFragment;
  readonly heads: DayHeads;
}

/** One day: a refused value is struck out, an estimated one in italics; the words stand at the end. */
export function WeatherDayRow({ day, heads }: Props) {
  const formats = useFormats();
  const inColumn = useColumnFigure();
  const isRefused = (field: string): boolean => day.marks.some(({ value, effect }) => value === field && effect === 'refused');
  const struck = (field: string, words: string): ReactNode => (isRefused(field) ? <del>{words}</del> : words);
  const rain = day.rainMm === null ? <i>{inColumn('depth', day.reckonedRainMm)}</i> : struck('rainMm', inColumn('depth', day.rainMm));
  const eto = inColumn('depth', day.etoMm);
  const figures: Readonly<Record<keyof DayHeads, ReactNode>> = {
    high: struck('tmaxC', inColumn('temperature', day.tmaxC)),
    low: struck('tminC', inColumn('temperature', day.tminC)),
    humidity: (
      <>
        {struck('rhMaxPercent', formats.number(day.rhMaxPercent))} / {struck('rhMinPercent', formats.number(day.rhMinPercent))}
      </>
    ),
    dewPoint: struck('dewPointC', inColumn('temperature', day.dewPointC)),
    wind: struck('windMPerS', inColumn('speed', day.windMPerS)),
    solar: struck('solarMjPerM2', formats.figure(day.solarMjPerM2, 1)),
    rain,
    eto: day.estimated ? <i>{eto}</i> : eto,
  };
  return (
    <tr>
      <td className="nw day-cell">{formats.day(day.day)}</td>
      {DAY_VALUES.map((value) => (
        <td key={value} className="num" data-head={heads[value]}>
          {figures[value]}
        </td>
      ))}
      <td className="says-cell">
        <DaySays day={day} />
      </td>
    </tr>
  );
}
