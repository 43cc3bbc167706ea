import { withMeaning } from '../../../../apps/api/src/features/exchange/files/table-file.js';
import type { FileMeaning } from '../../../../apps/api/src/features/exchange/files/table-file.js';
import { inMemory, known, type Outcome, outcomeOf } from '../imports-in-memory.js';

/** A station, and the height of its wind. */
export const S1: FileMeaning = { station: 'S1', windHeightM: 3 };

/** Runs an import of files of which all was said. */
export function laidOut(
  files: Readonly<Record<string, string | Buffer>>,
  meaning: FileMeaning = S1,
  organization = known,
  piece?: number,
): Promise<Outcome> {
  return outcomeOf(
    withMeaning(inMemory(files, piece), () => meaning),
    organization,
  );
}

/** Invented days under the codes of a daily network file. */
export const CODED_DAILY = `YEAR,MONTH,DAY,MN,MX,SR,YM,UA,PP,ETRS,ETOS
2023,02,27,30.20,50.00,300.00,28.40,4.50,0.00,0.11,0.08
2023,02,28,NO RECORD,59.00,NO RECORD,32.00,5.00,0.10,NO RECORD,NO RECORD
2023,03,01,41.00,68.00,400.00,35.60,10.00,0.00,0.20,0.15
`;

/** An hourly file of whole days: what each hour says is given by its number, 0 for the hour that ends at 01:00. */
export function codedHourly(days: number, cell: (hour: number, day: number) => string = () => '50.00,40.00,10.00,5.00'): string {
  const lines = ['YEAR,MONTH,DAY,HOUR,OB,TP,WS,SI'];
  for (let at = 0; at < days * 24; at += 1) {
    const ends = new Date(Date.UTC(2023, 5, 1, at + 1));
    const [year, month, day] = ends.toISOString().slice(0, 10).split('-');
    lines.push(`${year},${month},${day},${String(ends.getUTCHours()).padStart(2, '0')},${cell(at % 24, Math.floor(at / 24))}`);
  }
  return `${lines.join('\n')}\n`;
}

const FLAGGED = 'station,date,hour,doy,eto,qc,ppt,qc,sol,qc,vap,qc,tair,qc,rh,qc,dew,qc,wspd,qc,wdir,qc,tsoil,qc';

/** A day of 24 columns with verdicts; `hour` may change the cells of an hour. */
export function flagged(hour: (at: number) => string = () => FLAGGED_CELLS, station = '77', heading = true): string {
  const lines = Array.from({ length: 24 }, (_, at) => `${station},6/1/2024,${String((at + 1) * 100).padStart(4, '0')},153,${hour(at)}`);
  return `${heading ? `${FLAGGED}\n` : ''}${lines.join('\n')}\n`;
}

/** An hour: 0.2 mm, 0.1 mm rain, 500 W/m2, 1.2 kPa, 20 °C, 50 %, dew 9 °C, 2 m/s. */
export const FLAGGED_CELLS = '0.2, ,0.1, ,500, ,1.2, ,20, ,50, ,9, ,2, ,220, ,22, ';

/** One cell of a grid in the layout of Daymet, with the words that stand before it. */
export const DAYMET = `Latitude: 36.10  Longitude: -115.20
X & Y on Lambert Conformal Conic: -1342118.00 -523345.00
Tile: 11200
Elevation: 700 meters
All years; all variables
year,yday,dayl (s),prcp (mm/day),srad (W/m^2),swe (kg/m^2),tmax (deg c),tmin (deg c),vp (Pa)
2023,182,50000.00,0.00,350.00,0.00,33.10,15.20,1180.00
2024,60,40000.00,2.50,300.00,0.00,12.00,2.00,700.00
2024,365,34000.00,0.00,200.00,0.00,10.00,-1.00,500.00
`;

export const GRIDMET = `date,pr (mm),rmax (%),rmin (%),srad (W/m2),tmmn (K),tmmx (K),vs (m/s),sph (kg/kg),th,eto (mm),etr (mm)
2024-06-01,0.0,80.0,20.0,300.0,288.15,303.15,3.5,0.0080,220,6.5,8.1
2024-06-02,NaN,81.0,21.0,310.0,289.15,304.15,3.0,0.0081,210,6.6,8.2
`;

/** A year's file of GHCN-Daily has no heading. */
export const GHCN = `USC00047821,20240601,PRCP,25,,,7,0700
USC00047821,20240601,TMAX,289,,,7,0700
USC00047821,20240602,PRCP,0,T,,7,0700
USC00047821,20240601,TMIN,133,,I,7,0700
USC00047821,20240601,SNOW,0,,,7,
USC00047821,20240602,TMAX,-9999,,,7,0700
`;

export const PRISM = `PRISM Time Series Data
Location:  Lat: 36.1000   Lon: -115.2000   Elev: 2297ft
Climate variables: ppt,tmin,tmean,tmax
Spatial resolution: 4km
Period: 2024-06-01 - 2024-06-02
Dataset: invented
PRISM day definition: 24 hours ending at 1200 UTC on the day shown
Grid Cell Interpolation: Off
Time series generated: 2024-Jul-01
Details: none
Date,ppt (inches),tmin (degrees F),tmean (degrees F),tmax (degrees F)
2024-06-01,0.10,59.0,70.0,86.0
2024-06-02,-9999,60.0,71.0,87.0
`;

/** How a feed of a water meter may differ from the usual one. */
export interface FeedWish {
  readonly service?: string;
  readonly type?: Readonly<Record<string, string | null>>;
  readonly readings?: string;
  /** More of the feed, such as another series. */
  readonly more?: string;
  readonly prolog?: string;
}

const TYPE = {
  accumulationBehaviour: '4',
  commodity: '9',
  flowDirection: '1',
  intervalLength: '3600',
  kind: '58',
  powerOfTenMultiplier: '-1',
  uom: '128',
};

export const interval = (start: number | string, value: number | string, quality = '', duration: number | string = 3600): string =>
  `<IntervalReading>${quality && `<ReadingQuality><quality>${quality}</quality></ReadingQuality>`}<timePeriod><duration>${duration}</duration><start>${start}</start></timePeriod><value>${value}</value></IntervalReading>`;

/** 2024-06-01T07:00Z, midnight in Los Angeles. */
export const MIDNIGHT = 1_717_225_200;

const READINGS = [0, 1, 2].map((hour) => interval(MIDNIGHT + hour * 3600, 1234 + hour)).join('\n');

export const entry = (self: string, up: string, related: readonly string[], content: string): string =>
  `<entry><id>urn:uuid:${self}</id><link rel="self" href="/${self}"/><link rel="up" href="/${up}"/>${related.map((href) => `<link rel="related" href="/${href}"/>`).join('')}<content>${content}</content></entry>`;

/** A feed of one meter's water. */
export function feed({ service = '2', type = {}, readings = READINGS, more = '', prolog = '' }: FeedWish = {}): string {
  const fields = Object.entries({ ...TYPE, ...type }).flatMap(([name, value]) => (value === null ? [] : [`<${name}>${value}</${name}>`]));
  return `<?xml version="1.0" encoding="UTF-8"?>${prolog}
<feed xmlns="http://www.w3.org/2005/Atom" xmlns:espi="http://naesb.org/espi">
${entry('UsagePoint/1', 'UsagePoint', ['UsagePoint/1/MeterReading'], `<UsagePoint xmlns="http://naesb.org/espi"><ServiceCategory><kind>${service}</kind></ServiceCategory></UsagePoint>`)}
${entry('UsagePoint/1/MeterReading/1', 'UsagePoint/1/MeterReading', ['UsagePoint/1/MeterReading/1/IntervalBlock', 'ReadingType/1'], '<MeterReading xmlns="http://naesb.org/espi"/>')}
${entry('UsagePoint/1/MeterReading/1/IntervalBlock/1', 'UsagePoint/1/MeterReading/1/IntervalBlock', [], `<IntervalBlock xmlns="http://naesb.org/espi"><interval><duration>86400</duration><start>${MIDNIGHT}</start></interval>${readings}</IntervalBlock>`)}
${entry('ReadingType/1', 'ReadingType', [], `<ReadingType xmlns="http://naesb.org/espi">${fields.join('')}</ReadingType>`)}
${entry('LocalTimeParameters/1', 'LocalTimeParameters', [], '<LocalTimeParameters xmlns="http://naesb.org/espi"><dstOffset>3600</dstOffset><tzOffset>-28800</tzOffset></LocalTimeParameters>')}
${more}</feed>
`;
}
