import { FormattedMessage } from 'react-intl';
import type { DoubtOfAccountFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import type { Names } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';

/** Below this an input is not worth a line: measuring it would change nothing that can be seen. */
const LEAST_SHARE = 0.01;

interface Props {
  readonly gap: DoubtOfAccountFragment['aboveNeed'];
  readonly name: string;
  readonly names: Names;
}

/** One gap, how sure it is, and what would make it surer; nothing where the gap is not known. */
export function GapDoubt({ gap: { litres, sdLitres, inputs }, name, names }: Props) {
  const formats = useFormats();
  const { surer, volume } = useSays(names);
  const worth = inputs.filter(({ share }) => share >= LEAST_SHARE);
  if (typeof litres !== 'number') return null;
  return (
    <section>
      <h3>
        <FormattedMessage id="property.surer.doubt" values={{ gap: name, litres: volume(litres), doubt: volume(sdLitres) }} />
      </h3>
      {worth.length === 0 ? (
        <p className="soft">
          <FormattedMessage id="property.surer.none" />
        </p>
      ) : (
        <ol className="shares">
          {worth.map(({ input, subjectId, share }) => (
            <li key={`${input} ${subjectId}`}>
              <span className="num">{formats.percent(share)}</span>{' '}
              <span className="share" style={{ inlineSize: `${share * 100}%` }} aria-hidden="true" />
              <span>{surer({ input, subjectId: subjectId ?? null })}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
