import { Checkbox, type Choice } from '../../../../ui/forms/Select.js';
import { joined, partsOf } from './parts.js';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly choices: readonly Choice<string>[];
}

/** Any number of a few. */
export function ManyField({ label, value, onChange, choices }: Props) {
  const chosen = partsOf(value);
  return (
    <fieldset className="choices">
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
