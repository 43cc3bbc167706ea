import { useEffect } from 'react';
import { useIntl } from 'react-intl';
import { isActing, isTyping } from '../tables/keys.js';

interface Props {
  /** What the number is, for those who cannot see it. */
  readonly name: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly unit?: string;
  readonly hasPoint?: boolean;
}

const MOST_DIGITS = 12;

/** What a key does to the number so far. */
export function typed(value: string, key: string, hasPoint: boolean): string {
  if (key === 'Backspace') return value.slice(0, -1);
  if (key === '.') return hasPoint && !value.includes('.') ? `${value || '0'}.` : value;
  if (!/^\d$/.test(key) || value.replace('.', '').length >= MOST_DIGITS) return value;
  return value === '0' ? key : value + key;
}

/** As a register is read aloud: thousands apart, every typed decimal kept. */
const grouped = (value: string): string => {
  const [whole = '', ...rest] = value.split('.');
  return [(whole || '0').replace(/\B(?=(\d{3})+$)/g, ','), ...rest].join('.');
};

/** A register typed with large keys; a real keyboard works too. */
export function NumberPad({ name, value, onChange, unit, hasPoint = true }: Props) {
  const intl = useIntl();
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      if (isTyping(event.target) || event.ctrlKey || event.metaKey || (isActing(event.target) && event.key === 'Enter')) return;
      const after = typed(value, event.key, hasPoint);
      if (after !== value) onChange(after);
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [value, onChange, hasPoint]);
  const key = (sign: string) => (
    <button key={sign} type="button" onClick={() => onChange(typed(value, sign, hasPoint))}>
      {sign}
    </button>
  );
  return (
    <>
      <div className="register" role="status" aria-label={name}>
        <b>{grouped(value)}</b>
        {unit && <span>{unit}</span>}
      </div>
      <div className="pad">
        {['1', '2', '3', '4', '5', '6', '7', '8', '9'].map(key)}
        {hasPoint ? key('.') : <span />}
        {key('0')}
        <button type="button" className="word" onClick={() => onChange(typed(value, 'Backspace', hasPoint))}>
          {intl.formatMessage({ id: 'parts.delete' })}
        </button>
      </div>
    </>
  );
}
