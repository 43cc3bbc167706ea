import { useIntl } from 'react-intl';
import { plantFactor } from '@rillbook/agronomy/plants/plant-factor.js';
import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { LevelName, Levels, Span } from './levels.js';
import { Slider } from './Slider.js';

interface Props {
  readonly spans: Readonly<Record<LevelName, Span>>;
  readonly levels: Levels;
  readonly isOne: boolean;
  readonly areaM2: number;
  readonly onChange: (change: Partial<Levels>) => void;
}

/** What is usual, so that a number can be chosen: the same defaults that the accounts take. */
const FACTORS = {
  low: plantFactor(null, 'low', null).plantFactor,
  warm: plantFactor(null, null, 'turf warm-season').plantFactor,
  cool: plantFactor(null, null, 'turf cool-season').plantFactor,
} as const;
const UNIFORMITIES = {
  spray: defaultUniformity('spray').value,
  rotor: defaultUniformity('rotor').value,
  drip: defaultUniformity('subsurface drip').value,
} as const;

/** Other plants, better nozzles, less lawn. */
export function Sliders({ spans, levels, isOne, areaM2, onChange }: Props) {
  const intl = useIntl();
  const { percent, quantity, figure } = useFormats();
  const factor = (share: number): string => figure(share, 2);
  const { low, warm, cool } = FACTORS;
  const { spray, rotor, drip } = UNIFORMITIES;
  return (
    <>
      <Slider
        label={intl.formatMessage({ id: isOne ? 'whatIf.plants' : 'whatIf.plants.all' })}
        hint={
          isOne
            ? intl.formatMessage({ id: 'whatIf.plants.hint' }, { low: factor(low), warm: factor(warm), cool: factor(cool) })
            : intl.formatMessage({ id: 'whatIf.plants.all.hint' })
        }
        span={spans.plants}
        level={levels.plants}
        shown={(level) => (isOne ? factor(level / 100) : percent(level / 100))}
        onChange={(plants) => onChange({ plants })}
      />
      <Slider
        label={intl.formatMessage({ id: isOne ? 'whatIf.uniformity' : 'whatIf.uniformity.all' })}
        hint={intl.formatMessage({ id: 'whatIf.uniformity.hint' }, { spray: percent(spray), rotor: percent(rotor), drip: percent(drip) })}
        span={spans.uniformity}
        level={levels.uniformity}
        shown={(level) => percent(level / 100)}
        onChange={(uniformity) => onChange({ uniformity })}
      />
      <Slider
        label={intl.formatMessage({ id: 'whatIf.area' })}
        hint={intl.formatMessage({ id: 'whatIf.area.hint' }, { area: quantity('area', areaM2) })}
        span={spans.area}
        level={levels.area}
        shown={(level) => quantity('area', (areaM2 * level) / 100)}
        onChange={(area) => onChange({ area })}
      />
    </>
  );
}
