import type { FormEvent } from 'react';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { type Choice, Select } from '../../../ui/forms/Select.js';
import { AllowedDays } from './AllowedDays.js';
import { problemOfRule, type RuleDraft, type RuleProblem } from './rule-draft.js';

interface Props {
  readonly draft: RuleDraft;
  readonly rules: readonly Choice<string>[];
  readonly onChange: (draft: RuleDraft) => void;
  readonly onAsk: () => void;
}

/** The rule, typed: days a week, which days, hours in which nothing may run, since when, and what it replaces. */
export function RuleForm({ draft, rules, onChange, onAsk }: Props) {
  const intl = useIntl();
  const [problem, setProblem] = useState<RuleProblem | null>(null);
  const field = (key: Exclude<keyof RuleDraft, 'replaces' | 'allowedDays'>, wrong: readonly RuleProblem[] = []) => ({
    label: intl.formatMessage({ id: `ruleChange.${key}` }),
    value: draft[key],
    problem: problem && wrong.includes(problem) ? intl.formatMessage({ id: `ruleChange.wrong.${problem}` }) : null,
    onChange: (value: string) => onChange({ ...draft, [key]: value }),
  });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const found = problemOfRule(draft);
    setProblem(found);
    if (!found) onAsk();
  };
  return (
    <form className="form" onSubmit={submit} noValidate>
      <TextField {...field('name', ['name'])} />
      <TextField {...field('daysPerWeek', ['daysPerWeek', 'nothing'])} inputMode="numeric" />
      <AllowedDays days={draft.allowedDays} onChange={(allowedDays) => onChange({ ...draft, allowedDays })} />
      <TextField {...field('blockedFrom')} type="time" />
      <TextField {...field('blockedUntil', ['blocked'])} type="time" />
      <TextField {...field('effectiveFrom')} type="date" />
      <Select
        label={intl.formatMessage({ id: 'ruleChange.replaces' })}
        value={draft.replaces}
        choices={[{ value: '', words: intl.formatMessage({ id: 'ruleChange.replaces.none' }) }, ...rules]}
        onChange={(replaces) => onChange({ ...draft, replaces })}
      />
      <div className="form-end">
        <Button type="submit">
          <FormattedMessage id="ruleChange.ask" />
        </Button>
      </div>
    </form>
  );
}
