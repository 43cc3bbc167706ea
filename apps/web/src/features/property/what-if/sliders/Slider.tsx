import { Field } from '../../../../ui/forms/Field.js';
import type { Span } from './levels.js';

interface Props {
  readonly label: string;
  readonly hint: string;
  readonly span: Span;
  /** Null is as it is. */
  readonly level: number | null;
  /** A level as a number with its unit. */
  readonly shown: (level: number) => string;
  readonly onChange: (level: number | null) => void;
}

/** One thing that may be otherwise: by hand or with the arrow keys, its number and unit beside it. */
export function Slider({ label, hint, span: { min, max, now }, level, shown, onChange }: Props) {
  const words = shown(level ?? now);
  return (
    <Field label={label} hint={hint}>
      {(control) => (
        <span className="slid">
          <input
            id={control.id}
            aria-describedby={control['aria-describedby']}
            type="range"
            min={min}
            max={max}
            step={1}
            value={level ?? now}
            aria-valuetext={words}
            onChange={({ target }) => onChange(target.valueAsNumber === now ? null : target.valueAsNumber)}
          />
          <span className="num" aria-hidden="true">
            {words}
          </span>
        </span>
      )}
    </Field>
  );
}
