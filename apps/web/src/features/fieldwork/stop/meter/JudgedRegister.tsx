import { FormattedMessage } from 'react-intl';
import { isVolumeUnit, litres, volumeIn } from '@rillbook/units/volume.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { useSays } from '../../../../says/use-says.js';
import { Button } from '../../../../ui/forms/Button.js';
import { isDoubtful, type Judgement } from './use-judgement.js';

interface Props {
  readonly judged: Judgement | null;
  readonly unit: string;
  readonly timeZone: string;
  /** Takes the number that was probably meant. */
  readonly onLikely: (typed: string) => void;
}

/** What the number tells, at once and in words. */
export function JudgedRegister({ judged, unit, timeZone, onLikely }: Props) {
  const { number } = useFormats();
  const likely = judged && isDoubtful(judged.judgement) ? judged.likelyRegister : null;
  return (
    <div className="judged" role="status">
      {judged && <Told judgement={judged} unit={unit} timeZone={timeZone} />}
      {typeof likely === 'number' && (
        <p className="after">
          <Button kind="plain" onClick={() => onLikely(String(likely))}>
            <FormattedMessage id="field.judged.useLikely" values={{ register: number(likely, 3) }} />
          </Button>
        </p>
      )}
    </div>
  );
}

function Told({ judgement, unit, timeZone }: Pick<Props, 'unit' | 'timeZone'> & { readonly judgement: Judgement }) {
  const { moment, number } = useFormats();
  const { volume } = useSays();
  const { litresSinceLast: since } = judgement;
  const inUnit = typeof since === 'number' && isVolumeUnit(unit) ? `${number(volumeIn(litres(since), unit), 1)} ${unit}` : '';
  const values = {
    b: (words: readonly React.ReactNode[]) => <b>{words}</b>,
    isKnown: String(typeof since === 'number'),
    inUnit,
    volume: volume(since),
    last: number(judgement.lastRegister, 3),
    when: moment(judgement.lastReadAt?.toISOString() ?? null, timeZone),
  };
  return (
    <p>
      <FormattedMessage id={idOf(judgement.judgement)} values={values} />
    </p>
  );
}

const IDS = {
  first: 'field.judged.first',
  ok: 'field.judged.ok',
  rollover: 'field.judged.rollover',
  'lower than last': 'field.judged.lower',
  'implausibly high': 'field.judged.high',
  stuck: 'field.judged.stuck',
  'unit mixed up': 'field.judged.unit',
  'digits swapped': 'field.judged.digits',
} as const;

const idOf = (judgement: string): (typeof IDS)[keyof typeof IDS] | 'field.judged.other' =>
  Object.hasOwn(IDS, judgement) ? IDS[judgement as keyof typeof IDS] : 'field.judged.other';
