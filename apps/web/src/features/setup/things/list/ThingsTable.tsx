import type { ReactNode } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Head, Table } from '../../../../ui/tables/Table.js';
import type { Thing } from '../fields/field-spec.js';

/** How a thing is told in a list. */
export interface Told {
  readonly nameOf: (thing: Thing) => string;
  /** What else is worth a line. */
  readonly about: (thing: Thing) => ReactNode;
  /** Further links of a row. */
  readonly links?: (thing: Thing) => ReactNode;
}

interface Props extends Told {
  readonly name: string;
  readonly things: readonly Thing[];
  readonly onChange: (thing: Thing) => void;
}

/** The things of one kind, a row each. */
export function ThingsTable({ name, things, nameOf, about, links, onChange }: Props) {
  const intl = useIntl();
  return (
    <div className="narrow">
      <Table
        name={name}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="setup.list.name" />
            </Head>
            <Head>
              <FormattedMessage id="setup.list.about" />
            </Head>
            <Head>
              <span className="vh">
                <FormattedMessage id="setup.list.do" />
              </span>
            </Head>
          </tr>
        }
      >
        {things.map((thing) => (
          <tr key={thing.id}>
            <td>
              <b>{nameOf(thing)}</b>
            </td>
            <td>{about(thing)}</td>
            <td className="deeds">
              {links?.(thing)}
              <button
                type="button"
                className="link"
                aria-label={intl.formatMessage({ id: 'setup.list.changeOf' }, { name: nameOf(thing) })}
                onClick={() => onChange(thing)}
              >
                <FormattedMessage id="setup.list.change" />
              </button>
            </td>
          </tr>
        ))}
      </Table>
    </div>
  );
}
