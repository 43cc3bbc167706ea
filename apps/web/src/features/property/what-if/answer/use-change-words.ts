import { defaultUniformity } from '@rillbook/irrigation/hardware/uniformity/default-uniformity.js';
import { useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import type { Levels } from '../sliders/levels.js';

/** From here on water is spread as evenly as by a pressure-compensating drip line. */
const DRIP = defaultUniformity('subsurface drip').value;

/** What the sliders ask, as the part of a sentence that follows 'with'; null where all is as it is. */
export function useChangeWords({ plants, uniformity, area }: Levels, isOne: boolean): string | null {
  const intl = useIntl();
  const { figure, percent } = useFormats();
  const words: string[] = [];
  if (plants !== null)
    words.push(
      isOne
        ? intl.formatMessage({ id: 'whatIf.with.plants' }, { factor: figure(plants / 100, 2) })
        : intl.formatMessage({ id: 'whatIf.with.plants.all' }, { share: percent(plants / 100) }),
    );
  if (uniformity !== null) {
    const like = uniformity / 100 >= DRIP ? 'drip' : 'none';
    words.push(
      intl.formatMessage(
        { id: isOne ? 'whatIf.with.uniformity' : 'whatIf.with.uniformity.all' },
        { like, share: percent(uniformity / 100) },
      ),
    );
  }
  if (area !== null) words.push(intl.formatMessage({ id: 'whatIf.with.area' }, { share: percent(area / 100) }));
  return words.length === 0 ? null : intl.formatList(words, { type: 'conjunction' });
}
