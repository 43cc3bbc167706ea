import { Checkbox, type Choice } from '../../../../ui/forms/Select.js';
import { joined, partsOf } from './parts.js';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly choices: readonly Choice<string>[];
  /** Beside each other: short words. */
  readonly isAcross?: boolean;
}

/** Any number of a few. */
export function ManyField({ label, value, onChange, choices, isAcross = false }: Props) {
  const chosen = partsOf(value);
  return (
    <fieldset className={isAcross ? 'choices is-across' : 'choices'}>
      <legend>{label}</legend>
      {choices.map((choice) => (
        <Checkbox
          key={choice.value}
          label={choice.words}
          isChecked={chosen.includes(choice.value)}
          onChange={(isOn) =>
            onChange(joined(choices.map((one) => one.value).filter((one) => (one === choice.value ? isOn : chosen.includes(one)))))
          }
        />
      ))}
    </fieldset>
  );
}
