import { type ComponentProps, type ReactNode, useId } from 'react';
import { FormattedMessage } from 'react-intl';
import './forms.css';

/** What a control needs to belong to its label, hint and problem. */
export interface ControlProps {
  readonly id: string;
  readonly 'aria-describedby': string | undefined;
  readonly 'aria-invalid': true | undefined;
}

interface Props {
  readonly label: ReactNode;
  readonly hint?: ReactNode;
  /** What is wrong and what to do, in one sentence. */
  readonly problem?: string | null | undefined;
  readonly isOptional?: boolean;
  /** For links from the list of problems on top. */
  readonly id?: string;
  readonly children: (control: ControlProps) => ReactNode;
}

/** A label above, a hint under it, the control, and its problem in words beside it. */
export function Field({ label, hint, problem, isOptional = false, id: given, children }: Props) {
  const made = useId();
  const id = given ?? made;
  return (
    <div className={problem ? 'field has-problem' : 'field'}>
      <label htmlFor={id}>
        {label}
        {isOptional && (
          <>
            {' '}
            (<FormattedMessage id="parts.optional" />)
          </>
        )}
      </label>
      {hint && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {problem && (
        <p className="problem" id={`${id}-problem`}>
          <FormattedMessage id="parts.error" values={{ problem }} />
        </p>
      )}
      {children({ id, 'aria-describedby': describedBy(id, Boolean(hint), Boolean(problem)), 'aria-invalid': problem ? true : undefined })}
    </div>
  );
}

/** The ids of the hint and the problem, where there are any. */
export const describedBy = (id: string, hasHint: boolean, hasProblem: boolean): string | undefined =>
  [hasHint ? `${id}-hint` : '', hasProblem ? `${id}-problem` : ''].filter(Boolean).join(' ') || undefined;

interface TextProps
  extends Omit<Props, 'children'>,
    Pick<ComponentProps<'input'>, 'type' | 'inputMode' | 'autoComplete' | 'name' | 'min' | 'max' | 'autoFocus' | 'onBlur'> {
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Set beside the box: gal, sq ft, $. */
  readonly unit?: string;
}

/** One line of text or one number, with its unit beside it. */
export function TextField({ label, hint, problem, isOptional, id, value, onChange, unit, ...rest }: TextProps) {
  const field = { label, hint, problem, ...(isOptional ? { isOptional } : {}), ...(id ? { id } : {}) };
  return (
    <Field {...field}>
      {(control) => (
        <span className="with-unit">
          <input {...control} {...rest} value={value} onChange={(event) => onChange(event.target.value)} />
          {unit && <span className="unit">{unit}</span>}
        </span>
      )}
    </Field>
  );
}

/** Several lines. */
export function TextAreaField({ label, hint, problem, isOptional, id, value, onChange }: Omit<TextProps, 'unit'>) {
  const field = { label, hint, problem, ...(isOptional ? { isOptional } : {}), ...(id ? { id } : {}) };
  return (
    <Field {...field}>
      {(control) => <textarea {...control} rows={3} value={value} onChange={(event) => onChange(event.target.value)} />}
    </Field>
  );
}
