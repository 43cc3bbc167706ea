import { flowAtPressure } from '@rillbook/irrigation/hardware/flow/flow-at-pressure.js';
import { flowOfHeads } from '@rillbook/irrigation/hardware/flow/flow-of-heads.js';
import { precipitationRateOfDripGrid } from '@rillbook/irrigation/hardware/precipitation/drip-rate.js';
import {
  fullCircleFlow,
  precipitationRateOfPattern,
  triangularRowSpacing,
} from '@rillbook/irrigation/hardware/precipitation/head-layout.js';
import { type LandscapeUse, type OrdinanceRule, ordinanceRuleOn } from '@rillbook/metering/volumes/allowances/ordinance-rules.js';
import { degrees } from '@rillbook/units/angle.js';
import { litresPerMinute } from '@rillbook/units/flow.js';
import { metres } from '@rillbook/units/length.js';
import { kilopascals } from '@rillbook/units/pressure.js';
import { date, type FieldSpec, number, quantity, whole, word } from '../fields/field-spec.js';

/** What was typed for an aid, as it is stored: numbers in SI, words; null where nothing was. */
export interface Asked {
  readonly figure: (key: string) => number | null;
  readonly word: (key: string) => string;
}

/** A way to work out a field that few people know by heart, from what can be read off nozzles, lines and laws. */
export interface FieldAid {
  /** Named by the message `aid.<name>`; what to heed is `aid.heed.<name>`. */
  readonly name: string;
  readonly fields: readonly FieldSpec[];
  /** As it is stored; null where there is none. Throws a `DomainError` where the figures cannot be. */
  readonly answer: (asked: Asked) => number | null;
}

const MILLIMETRES_PER_METRE = 1000;
const FULL_CIRCLE = 360;
/** A key with 'needed' said: the figure is there, as nothing is reckoned before all that is needed is. */
const needed = (value: number | null): number => value ?? Number.NaN;

const rateOfHeads: FieldAid = {
  name: 'rateOfHeads',
  fields: [
    quantity('headFlow', 'flow', true),
    number('headArc'),
    quantity('headSpacing', 'length', true),
    quantity('rowSpacing', 'length'),
  ],
  answer: ({ figure }) => {
    const flow = fullCircleFlow(litresPerMinute(needed(figure('headFlow'))), degrees(figure('headArc') ?? FULL_CIRCLE));
    const between = metres(needed(figure('headSpacing')));
    const rows = figure('rowSpacing');
    return precipitationRateOfPattern(flow, between, rows === null ? triangularRowSpacing(between) : metres(rows));
  },
};

const rateOfDripGrid: FieldAid = {
  name: 'rateOfDripGrid',
  fields: [quantity('emitterFlow', 'emitterFlow', true), quantity('emitterSpacing', 'depth', true), quantity('lineSpacing', 'depth', true)],
  answer: ({ figure }) => {
    const apart = (key: string) => metres(needed(figure(key)) / MILLIMETRES_PER_METRE);
    return precipitationRateOfDripGrid(litresPerMinute(needed(figure('emitterFlow'))), apart('lineSpacing'), apart('emitterSpacing'));
  },
};

const flowOfZone: FieldAid = {
  name: 'flowOfZone',
  fields: [
    whole('headCount', true),
    quantity('headFlow', 'flow', true),
    whole('otherHeadCount'),
    quantity('otherHeadFlow', 'flow'),
    quantity('chartPressure', 'pressure'),
    quantity('zonePressure', 'pressure'),
  ],
  answer: ({ figure }) => {
    const heads = [
      { count: needed(figure('headCount')), flow: litresPerMinute(needed(figure('headFlow'))) },
      { count: figure('otherHeadCount') ?? 0, flow: litresPerMinute(figure('otherHeadFlow') ?? 0) },
    ];
    const flow = flowOfHeads(heads);
    const [chart, zone] = [figure('chartPressure'), figure('zonePressure')];
    return chart === null || zone === null ? flow : flowAtPressure(flow, kilopascals(chart), kilopascals(zone));
  },
};

const authorities = ['California', 'San Diego'] as const satisfies readonly OrdinanceRule['authority'][];
const uses = ['residential', 'non-residential', 'existing'] as const satisfies readonly LandscapeUse[];

const etafOfOrdinance: FieldAid = {
  name: 'etafOfOrdinance',
  fields: [
    word('ordinanceOf', 'ordinanceOf', authorities, true),
    word('landscapeUse', 'landscapeUse', uses, true),
    date('approvedOn', true),
  ],
  answer: ({ word: chosen }) => {
    const rule = ordinanceRuleOn(chosen('ordinanceOf') as (typeof authorities)[number], chosen('approvedOn'));
    return rule?.etaf[chosen('landscapeUse') as (typeof uses)[number]] ?? null;
  },
};

/** Aids by the field that they fill. */
export const fieldAids: Readonly<Record<string, readonly FieldAid[]>> = {
  precipMmPerH: [rateOfHeads, rateOfDripGrid],
  flowLPerMin: [flowOfZone],
  allowanceEtaf: [etafOfOrdinance],
};
