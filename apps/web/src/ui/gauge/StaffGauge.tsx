import { useMemo, useRef } from 'react';
import type { VolumeColumn } from '@rillbook/showing/formats/formats.js';
import { drawGauge } from '@rillbook/showing/gauge/draw-gauge.js';
import {
  GAPS,
  type GapKind,
  type GaugeGap,
  type GaugeNumbers,
  type GaugeSize,
  type GaugeVolume,
  isKnown,
  MARKS,
  type Mark,
} from '@rillbook/showing/gauge/drawing/model.js';
import { useGaugeWords } from './use-gauge-words.js';
import { useWidth } from './use-width.js';
import './gauge.css';

/** A volume as the account has it, in litres. */
export interface AccountVolume {
  readonly litres?: number | null;
  readonly sdLitres?: number | null;
  readonly estimatedShare?: number | null;
}

/** A gap as the account has it: its own uncertainty and its own judgement of what can be measured. */
export interface AccountGap {
  readonly litres?: number | null;
  readonly sdLitres?: number | null;
  readonly within?: boolean | null;
  readonly money?: number | null;
}

/** The part of a month account that is drawn. */
export interface GaugeAccount extends Readonly<Record<Mark, AccountVolume>> {
  readonly landscapeGap: AccountGap;
  readonly settingsGap: AccountGap;
  readonly unexplainedGap: AccountGap;
  readonly aboveAllowed: AccountGap;
  readonly aboveNeed?: AccountGap;
}

interface Props {
  readonly account: GaugeAccount;
  /** `fit` is `large` where there is room for it and `phone` where there is not. */
  readonly size: GaugeSize | 'fit';
  /** Why a volume or a gap is missing, in the person's words. */
  readonly missing?: Partial<Record<Mark | GapKind, string>>;
  /** Top of the scale in litres, to share it between gauges: twice the allowed in a list. */
  readonly scaleTopLitres?: number;
  readonly rain?: { readonly depthMm: number; readonly fullMm: number };
}

/** Narrower than this the words of the large board would be too small to read. */
const ROOM_FOR_LARGE = 760;

/** The month account as a painted board: water as high as the meter says, four marks, and the three steps between them. */
export function StaffGauge({ account, size, missing, scaleTopLitres, rain }: Props) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place, size === 'fit' || size === 'phone');
  const { words, column } = useGaugeWords(largest(account, scaleTopLitres));
  const drawn = useMemo(() => {
    const numbers = gaugeNumbers(account, { missing, scaleTopLitres, rain }, column);
    const chosen = size === 'fit' ? (width !== null && width < ROOM_FOR_LARGE ? 'phone' : 'large') : size;
    return drawGauge(numbers, words, { size: chosen, ...(width === null ? {} : { width }) });
  }, [account, missing, scaleTopLitres, rain, column, words, size, width]);
  // The drawing escapes every word it is given; tests/web/gauge feeds it hostile ones.
  return <div className="gauge-place" ref={place} dangerouslySetInnerHTML={{ __html: drawn }} />;
}

const largest = (account: GaugeAccount, scaleTop: number | undefined): number =>
  Math.max(scaleTop ?? 0, ...MARKS.map((mark) => Math.abs(account[mark].litres ?? 0)));

interface Extras {
  readonly missing: Props['missing'];
  readonly scaleTopLitres: number | undefined;
  readonly rain: Props['rain'];
}

/** The account in the unit that is shown. */
export function gaugeNumbers(
  account: GaugeAccount,
  { missing = {}, scaleTopLitres, rain }: Extras,
  { fromLitres, decimals }: Pick<VolumeColumn, 'fromLitres' | 'decimals'>,
): GaugeNumbers {
  const shown = (litres: number | null | undefined): number | null => (isKnown(litres) ? fromLitres(litres) : null);
  const because = (what: Mark | GapKind): { missing?: string } => (missing[what] ? { missing: missing[what] } : {});
  const volume = (mark: Mark): GaugeVolume => {
    const { litres, sdLitres, estimatedShare } = account[mark];
    return { value: shown(litres), sd: shown(sdLitres), estimated: (estimatedShare ?? 0) > 0, ...because(mark) };
  };
  const gap = ({ litres, sdLitres, within, money }: AccountGap): GaugeGap => ({
    value: shown(litres),
    sd: shown(sdLitres),
    within: within ?? false,
    money: money ?? null,
  });
  const volumes = Object.fromEntries(MARKS.map((mark) => [mark, volume(mark)])) as Record<Mark, GaugeVolume>;
  const gaps = Object.fromEntries(GAPS.map(({ kind }) => [kind, { ...gap(account[`${kind}Gap`]), ...because(kind) }])) as Record<
    GapKind,
    GaugeGap
  >;
  return {
    volumes,
    gaps,
    leastStep: 10 ** -decimals,
    aboveAllowed: gap(account.aboveAllowed),
    ...(account.aboveNeed ? { aboveNeed: gap(account.aboveNeed) } : {}),
    ...(scaleTopLitres === undefined ? {} : { scaleTop: fromLitres(scaleTopLitres) }),
    ...(rain ? { rain: { depth: rain.depthMm, full: rain.fullMm } } : {}),
  };
}
