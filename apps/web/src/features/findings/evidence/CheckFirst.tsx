import { FormattedMessage, useIntl } from 'react-intl';
import type { MessageId } from '../../../i18n/catalogue.js';
import { messageOf } from '../../../says/saying.js';

const DIGGING = new Set(['unexplained use', 'steady flow', 'zone flow changed', 'seen on site']);
const WIRING = new Set(['not delivering', 'off-schedule run', 'watered in rain']);
const CUTTING = new Set(['over-programmed', 'overwatered', 'over allowance', 'mixed water needs']);

/** The cautions of the work that a kind of finding leads to. */
const cautionsOf = (kind: string): readonly MessageId[] => [
  ...(DIGGING.has(kind) ? (['findings.caution.dig'] as const) : []),
  ...(WIRING.has(kind) ? (['findings.caution.mains'] as const) : []),
  ...(CUTTING.has(kind) ? (['findings.caution.plants'] as const) : []),
];

/** What hands look at first, in their order; common practice. */
export function CheckFirst({ kind }: { readonly kind: string }) {
  const intl = useIntl();
  const steps = messageOf({ intl }, `check.${kind}`)?.split('\n') ?? [];
  if (steps.length === 0) return null;
  return (
    <div>
      <h3>
        <FormattedMessage id="findings.check" />
      </h3>
      <ol>
        {steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {cautionsOf(kind).map((id) => (
        <p key={id} className="caution">
          <FormattedMessage id={id} />
        </p>
      ))}
    </div>
  );
}
