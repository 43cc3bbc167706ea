import { useState } from 'react';
import { FormattedMessage } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { ALL_TOGETHER, type FileProblem } from './imports.js';

interface Props {
  readonly problems: readonly FileProblem[];
  readonly name: string;
}

const FIRST = 20;

/** Each problem: file, line, column, what was found and what is expected. */
export function ProblemTable({ problems, name }: Props) {
  const { number } = useFormats();
  const [isWhole, setWhole] = useState(false);
  const shown = isWhole ? problems : problems.slice(0, FIRST);
  return (
    <>
      <Table
        name={name}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="setup.problem.file" />
            </Head>
            <Head isNumber>
              <FormattedMessage id="setup.problem.line" />
            </Head>
            <Head>
              <FormattedMessage id="setup.problem.column" />
            </Head>
            <Head>
              <FormattedMessage id="setup.problem.found" />
            </Head>
            <Head>
              <FormattedMessage id="setup.problem.expected" />
            </Head>
          </tr>
        }
      >
        {shown.map(({ file, line, column, code, found, expected, says }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two rows of a file may have the very same problem
          <tr key={`${at} ${code}`}>
            <td>{file === ALL_TOGETHER ? '' : file}</td>
            <Num>{line === null ? '' : number(line)}</Num>
            <td>{column ?? ''}</td>
            <td className="found-cell">{found}</td>
            <td>
              {says}
              {expected && !says.includes(expected) && <span className="soft"> {expected}</span>}
            </td>
          </tr>
        ))}
      </Table>
      {!isWhole && problems.length > FIRST && (
        <button type="button" className="link" onClick={() => setWhole(true)}>
          <FormattedMessage id="setup.problem.all" values={{ count: problems.length }} />
        </button>
      )}
    </>
  );
}
