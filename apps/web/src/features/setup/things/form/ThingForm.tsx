import { type FormEvent, Fragment, useId } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Button } from '../../../../ui/forms/Button.js';
import { ProblemList } from '../../../../ui/forms/ProblemList.js';
import type { Choice } from '../../../../ui/forms/Select.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { AidFold } from '../aids/AidFold.js';
import { fieldAids } from '../aids/field-aids.js';
import { Clash } from './Clash.js';
import type { Draft, Thing } from '../fields/field-spec.js';
import type { Wrong } from '../fields/read-field.js';
import type { ThingKind } from './outcome.js';
import { Retire } from './Retire.js';
import { labelOf, ThingField } from '../fields/ThingField.js';
import { useThingForm } from './use-thing-form.js';

export interface FormProps {
  readonly kind: ThingKind;
  /** Null for a new one. */
  readonly thing: Thing | null;
  /** What a new one belongs to, and what it usually is. */
  readonly fixed?: Draft;
  /** What is sent with it and not typed, such as the property that it stands on. */
  readonly belongs?: Readonly<Record<string, unknown>>;
  readonly choices?: Readonly<Record<string, readonly Choice<string>[]>>;
  readonly refetch: readonly string[];
  readonly onEnd: () => void;
}

/** Creates, changes or retires a kept thing. What another person changed meanwhile stands beside what was typed here. */
export function ThingForm({ kind, thing, fixed = {}, belongs = {}, choices = {}, refetch, onEnd }: FormProps) {
  const intl = useIntl();
  const id = useId();
  const form = useThingForm({ kind, thing, fixed, belongs, refetch, onEnd });
  const { opened, draft, wrong, refusal, clash } = form;
  const wordsOf = ({ key, why, found }: Wrong): string =>
    intl.formatMessage({ id: `setup.wrong.${why}` }, { label: labelOf(intl, key), found });
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void form.save(opened?.version ?? null);
  };
  return (
    <form className="form" onSubmit={submit} noValidate>
      <ProblemList
        problems={[...wrong.map((one) => ({ field: `${id}-${one.key}`, words: wordsOf(one) })), ...(refusal ? [{ words: refusal }] : [])]}
      />
      {form.problem ? <ErrorState problem={form.problem} /> : null}
      {clash && (
        <Clash
          clash={clash}
          kind={kind}
          thing={thing}
          draft={draft}
          choices={choices}
          onMine={(version) => void form.save(version)}
          onTheirs={form.takeTheirs}
        />
      )}
      {kind.fields.map((spec) => {
        const bad = wrong.find(({ key }) => key === spec.key);
        const aids = fieldAids[spec.key];
        return (
          <Fragment key={spec.key}>
            <ThingField
              id={`${id}-${spec.key}`}
              spec={spec}
              value={draft[spec.key] ?? ''}
              onChange={(value) => form.set(spec.key, value)}
              problem={bad ? wordsOf(bad) : null}
              choices={choices[spec.key] ?? []}
            />
            {aids && <AidFold spec={spec} aids={aids} onTake={(text) => form.set(spec.key, text)} />}
          </Fragment>
        );
      })}
      <div className="form-end end-line">
        <Button type="submit" kind="main" isBusy={form.isBusy}>
          <FormattedMessage id={opened ? 'setup.save' : 'setup.create'} />
        </Button>
        {opened && <Retire onRetire={() => void form.retire()} />}
      </div>
    </form>
  );
}
