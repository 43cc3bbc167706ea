import { mergeKept, type Wish } from '../kept/merge-kept.js';
import { saysOf } from '../kept/says-of.js';
import type { FileMerge } from '../directory/file-merge.js';

/** clients.csv */
export const mergeClients: FileMerge<'clients'> = ({ tx, directory }, { columns, rows }) => {
  const wishes = rows.map(({ values, typed }): Wish => {
    const { client, emails, language, units, notToExceed } = values;
    return {
      id: directory.clients.of(client),
      typed,
      values: { name: client, emails: [...(emails ?? [])], language, units, notToExceed },
    };
  });
  return mergeKept(tx, 'client', wishes, saysOf('clients', columns, { name: 'client' }));
};
