import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { graphql } from '../../../../graphql/__generated__/gql.js';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Fetched } from '../../../../page/Fetched.js';
import { Button } from '../../../../ui/forms/Button.js';
import { Section } from '../../../../ui/frame/Section.js';
import { ErrorState } from '../../../../ui/states/States.js';
import { type CheckedFile, type CheckedUpload, type FileMeaning, imports, type RecognizedFile } from './imports.js';
import { useRequest } from './use-request.js';
import { type Draft, draftOf, isQuestion, meaningOf } from './whose-file.js';
import { WhoseFile } from './WhoseFile.js';

const ownersDocument = graphql(`
  query FileOwners {
    weatherStations {
      id
      name
      retiredAt
    }
    properties {
      id
      name
      meters {
        id
        name
        retiredAt
      }
    }
  }
`);

interface Props {
  readonly upload: CheckedUpload;
  readonly onChecked: (upload: CheckedUpload) => void;
}

/** A file with a layout of its own. */
interface OwnedFile extends CheckedFile {
  readonly recognized: RecognizedFile;
}

/** Files of a weather station or a meter do not say whose they are: it is asked, and what is plain is chosen already. */
export function WhoseFiles({ upload, onChecked }: Props) {
  const files = upload.files.filter((file): file is OwnedFile => file.recognized !== null);
  const names = [...new Set(files.map(({ name }) => name))];
  if (files.length === 0) return null;
  return (
    <Owners
      key={names.join()}
      upload={upload}
      files={names.map((name) => files.find((file) => file.name === name)!)}
      onChecked={onChecked}
    />
  );
}

function Owners({ upload, files, onChecked }: Props & { readonly files: readonly OwnedFile[] }) {
  const intl = useIntl();
  const formats = useFormats();
  const query = useQuery(ownersDocument);
  const { run, isBusy, problem } = useRequest(imports.mean);
  const [drafts, setDrafts] = useState<Readonly<Record<string, Draft>>>(() =>
    Object.fromEntries(files.map(({ name, recognized }) => [name, draftOf(recognized, formats)])),
  );
  const isAsked = files.some(({ problems }) => problems.some(isQuestion));
  const say = async (): Promise<void> => {
    const meanings: Record<string, FileMeaning> = Object.fromEntries(
      files.map(({ name, recognized }) => [name, meaningOf(drafts[name]!, recognized, formats)]),
    );
    const checked = await run(upload.id, meanings);
    if (checked) onChecked(checked);
  };
  return (
    <Section
      heading={intl.formatMessage({ id: 'setup.whose.title' }, { count: files.length })}
      note={<FormattedMessage id="setup.whose.note" />}
    >
      <Fetched query={query}>
        {({ weatherStations, properties }) => (
          <form
            className="whose"
            onSubmit={(event) => {
              event.preventDefault();
              void say();
            }}
          >
            {files.map(({ name, recognized }) => (
              <WhoseFile
                key={name}
                name={name}
                file={recognized}
                stations={weatherStations.filter(({ retiredAt }) => !retiredAt).map((station) => station.name)}
                properties={properties.map((property) => ({
                  name: property.name,
                  meters: property.meters.filter(({ retiredAt }) => !retiredAt).map((meter) => meter.name),
                }))}
                draft={drafts[name]!}
                onChange={(draft) => setDrafts({ ...drafts, [name]: draft })}
              />
            ))}
            {problem ? <ErrorState problem={problem} /> : null}
            <Button type="submit" kind={isAsked ? 'main' : 'usual'} isBusy={isBusy}>
              <FormattedMessage id="setup.whose.check" />
            </Button>
          </form>
        )}
      </Fetched>
    </Section>
  );
}
