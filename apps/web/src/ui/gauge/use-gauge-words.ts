import { useMemo } from 'react';
import { type IntlShape, useIntl } from 'react-intl';
import type { Formats, VolumeColumn } from '../../i18n/formats.js';
import { useFormats } from '../../i18n/LanguageProvider.js';
import type { GaugeWords } from '@rillbook/showing/gauge/drawing/model.js';

/** The gauge's words in the person's language, for volumes in one unit. */
export function gaugeWords(intl: IntlShape, formats: Formats, column: VolumeColumn): GaugeWords {
  const say = intl.formatMessage;
  const sides = (kind: 'landscape' | 'settings' | 'unexplained' | 'aboveAllowed' | 'aboveNeed') => ({
    above: say({ id: `gauge.${kind}.above` }),
    below: say({ id: `gauge.${kind}.below` }),
  });
  const remedy = (kind: 'landscape' | 'settings' | 'unexplained') => ({
    above: say({ id: `gauge.${kind}.doAbove` }),
    below: say({ id: `gauge.${kind}.doBelow` }),
  });
  return {
    unit: column.unit,
    thousandUnit: column.thousandUnit,
    marks: {
      allowed: say({ id: 'gauge.allowed' }),
      needed: say({ id: 'gauge.needed' }),
      programmed: say({ id: 'gauge.programmed' }),
      metered: say({ id: 'gauge.metered' }),
    },
    gaps: {
      landscape: say({ id: 'gauge.landscape' }),
      settings: say({ id: 'gauge.settings' }),
      unexplained: say({ id: 'gauge.unexplained' }),
    },
    compare: {
      landscape: sides('landscape'),
      settings: sides('settings'),
      unexplained: sides('unexplained'),
      aboveAllowed: sides('aboveAllowed'),
      aboveNeed: sides('aboveNeed'),
    },
    remedy: { landscape: remedy('landscape'), settings: remedy('settings'), unexplained: remedy('unexplained') },
    missing: say({ id: 'gauge.missing' }),
    estimated: say({ id: 'gauge.estimated' }),
    within: (spread) => (spread ? say({ id: 'gauge.withinSpread' }, { spread }) : say({ id: 'gauge.within' })),
    waitsFor: (gap, mark) => say({ id: 'gauge.waitsFor' }, { gap, mark }),
    notKnown: (gap) => say({ id: 'gauge.notKnown' }, { gap }),
    about: (money) => say({ id: 'gauge.about' }, { money }),
    number: (value, decimals) => formats.figure(value, decimals),
    money: (value) => formats.money(value),
  };
}

/** The words and the conversion for a gauge whose largest volume is this. */
export function useGaugeWords(largestLitres: number): { words: GaugeWords; column: VolumeColumn } {
  const intl = useIntl();
  const formats = useFormats();
  return useMemo(() => {
    const column = formats.volumeColumn(largestLitres);
    return { column, words: gaugeWords(intl, formats, column) };
  }, [intl, formats, largestLitres]);
}
