import { type FormEvent, useId, useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { useDeed } from '../../../page/use-deed.js';
import { useToast } from '../../../ui/dialogs/Toasts.js';
import { Button } from '../../../ui/forms/Button.js';
import { TextField } from '../../../ui/forms/Field.js';
import { ProblemList } from '../../../ui/forms/ProblemList.js';
import { ErrorState } from '../../../ui/states/States.js';
import { HoursFields } from './HoursFields.js';
import {
  draftOfTerms,
  type HoursDraft,
  inputOfTerms,
  newHours,
  type Terms,
  type TermsDraft,
  type TermsWrong,
  wrongOfTerms,
} from './terms-draft.js';

const setTermsDocument = graphql(`
  mutation SetVisitTerms($propertyId: ID!, $version: Int, $input: VisitTermsInput!) {
    setVisitTerms(propertyId: $propertyId, version: $version, input: $input) {
      __typename
      ... on VisitTerms {
        version
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
    }
  }
`);

interface Props {
  readonly propertyId: string;
  readonly terms: (Terms & { readonly version: number }) | null;
  readonly onEnd: () => void;
}

/** Saves terms. Where somebody else has changed them meanwhile nothing is written; a second press writes over what they wrote. */
function useTerms({ propertyId, terms, onEnd }: Props) {
  const intl = useIntl();
  const { time } = useFormats();
  const toast = useToast();
  const deed = useDeed(setTermsDocument, { refetch: ['SetupProperty'] });
  const [version, setVersion] = useState(terms?.version ?? null);
  const [clash, setClash] = useState<string | null>(null);
  const save = async (draft: TermsDraft): Promise<void> => {
    const answer = (await deed.run({ propertyId, version, input: inputOfTerms(draft) }))?.setVisitTerms;
    if (answer?.__typename === 'VisitTerms') {
      toast({ words: intl.formatMessage({ id: 'setup.kept' }) });
      return onEnd();
    }
    if (answer?.__typename !== 'ChangedMeanwhile') return;
    setVersion(answer.version);
    setClash(intl.formatMessage({ id: 'setup.visits.clash' }, { by: answer.changedBy ?? 'nobody', time: time(answer.changedAt) }));
  };
  return { save, clash, isBusy: deed.isBusy, problem: deed.problem };
}

/** How often a property is visited, how long that takes, who can do it, and the hours of its gate or school. */
export function VisitTermsForm(props: Props) {
  const intl = useIntl();
  const id = useId();
  const { save, clash, isBusy, problem } = useTerms(props);
  const [draft, setDraft] = useState(() => draftOfTerms(props.terms));
  const [wrong, setWrong] = useState<readonly TermsWrong[]>([]);
  const set = (change: Partial<TermsDraft>): void => setDraft((before) => ({ ...before, ...change }));
  const wordsOf = ({ why, found }: TermsWrong): string => intl.formatMessage({ id: `setup.visits.wrong.${why}` }, { found });
  const problemOf = (field: string): string | null => {
    const bad = wrong.find((one) => one.field === field);
    return bad ? wordsOf(bad) : null;
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const found = wrongOfTerms(draft);
    setWrong(found);
    if (found.length === 0) void save(draft);
  };
  const problems = [...wrong.map((one) => ({ field: `${id}-${one.field}`, words: wordsOf(one) })), ...(clash ? [{ words: clash }] : [])];
  return (
    <form className="form" onSubmit={submit} noValidate>
      <ProblemList problems={problems} />
      {problem ? <ErrorState problem={problem} /> : null}
      {(['everyDays', 'visitMinutes', 'skills'] as const).map((key) => (
        <TextField
          key={key}
          isOptional
          id={`${id}-${key}`}
          label={intl.formatMessage({ id: `setup.visits.${key}` })}
          hint={intl.formatMessage({ id: `setup.visits.hint.${key}` })}
          {...(key === 'skills' ? {} : { inputMode: 'numeric' })}
          value={draft[key]}
          problem={problemOf(key)}
          onChange={(value) => set({ [key]: value })}
        />
      ))}
      <HoursList id={id} hours={draft.hours} problemOf={problemOf} onChange={(hours) => set({ hours })} />
      <div className="form-end">
        <Button type="submit" kind="main" isBusy={isBusy}>
          <FormattedMessage id="setup.save" />
        </Button>
      </div>
    </form>
  );
}

interface ListProps {
  readonly id: string;
  readonly hours: readonly HoursDraft[];
  readonly problemOf: (field: string) => string | null;
  readonly onChange: (hours: readonly HoursDraft[]) => void;
}

function HoursList({ id, hours, problemOf, onChange }: ListProps) {
  return (
    <>
      {hours.map((one) => (
        <HoursFields
          key={one.key}
          id={id}
          hours={one}
          problemOf={problemOf}
          onChange={(next) => onChange(hours.map((other) => (other.key === one.key ? next : other)))}
          onRemove={() => onChange(hours.filter(({ key }) => key !== one.key))}
        />
      ))}
      <div className="form-end">
        {(['open', 'closed'] as const).map((kind) => (
          <Button key={kind} onClick={() => onChange([...hours, newHours(kind, hours)])}>
            <FormattedMessage id={`setup.visits.add.${kind}`} />
          </Button>
        ))}
      </div>
    </>
  );
}
