import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { messageOf } from '../../../../says/saying.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { ALL_TOGETHER, type CheckedFile, type CheckedUpload, imports } from './imports.js';
import { isWaiting } from './row-counts.js';

const COUNTS = ['new', 'changed', 'same', 'wrong'] as const;

/** Per file: what is new, changed, the same and wrong; of a file that waits for an answer nothing is known yet. */
export function CheckedFiles({ upload }: { readonly upload: CheckedUpload }) {
  const intl = useIntl();
  const files = upload.files.filter(({ name }) => name !== ALL_TOGETHER);
  return (
    <div className="narrow checked">
      <Table
        name={intl.formatMessage({ id: 'setup.files.table' })}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="setup.files.file" />
            </Head>
            {COUNTS.map((of) => (
              <Head key={of} isNumber>
                <FormattedMessage id={`setup.files.${of}`} />
              </Head>
            ))}
          </tr>
        }
      >
        {files.map((file) => (
          <FileRow key={`${file.name} ${file.file}`} file={file} uploadId={upload.id} />
        ))}
      </Table>
      {upload.ignored.length > 0 && (
        <div className="notice">
          <h3>
            <FormattedMessage id="setup.ignored" values={{ count: upload.ignored.length }} />
          </h3>
          <ul>
            {upload.ignored.map((file) => (
              <li key={file.name}>
                <b>{file.name}</b> {file.says}
              </li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}

/** One file's counts, and its rows to be mended. */
function FileRow({ file, uploadId }: { readonly file: CheckedFile; readonly uploadId: string }) {
  const intl = useIntl();
  const { number } = useFormats();
  return (
    <tr>
      <td>
        <b>{file.file ? (messageOf({ intl }, `setup.kind.${file.file}`) ?? file.file) : file.name}</b>{' '}
        <span className="soft xs">{file.name}</span>
        {isWaiting(file) ? (
          <p>
            <FormattedMessage id="setup.files.asked" />
          </p>
        ) : (
          file.status === 'refused' && (
            <p className="clay">
              <FormattedMessage id="setup.files.refused" />
            </p>
          )
        )}
        {file.wrong > 0 && file.rejectedAs && (
          <a className="mend" href={imports.rejectedPath(uploadId, file.rejectedAs)} download>
            <FormattedMessage id="setup.files.download" values={{ count: file.wrong }} />
          </a>
        )}
      </td>
      {isWaiting(file) ? (
        <td className="num" colSpan={COUNTS.length}>
          <FormattedMessage id="setup.files.waits" />
        </td>
      ) : (
        COUNTS.map((of) => (
          <Num key={of}>{of === 'wrong' && file.wrong > 0 ? <b className="clay">{number(file.wrong)}</b> : number(file[of])}</Num>
        ))
      )}
    </tr>
  );
}
