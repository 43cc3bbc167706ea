import { mkdir } from 'node:fs/promises';
import { ExportDeed } from '../features/exchange/export/export-deed.service.js';
import { folderSink } from '../features/exchange/export/folder-sink.js';
import { organizationActor } from '../platform/database/actor.js';
import { type Command, type ExitCode, UsageProblem } from './command.js';
import { folderWords, organizationMeant } from './folder-words.js';
import { withProduct } from './open-product.js';

/** Exports an organization as the files of the import folder, with its accounts and findings. */
export const exportFolder: Command = {
  name: 'export',
  summary: 'Writes what an organization has as CSV files that can be imported again, and its accounts and findings.',
  usage: 'FOLDER [--organization NAME]',
  async run(words) {
    const { folder, organization } = folderWords(words, []);
    return withProduct<ExitCode>(async ({ app, database }) => {
      const present = await organizationMeant(database.adminUrl, organization);
      if (!present) throw new UsageProblem(`There is no organization "${organization}".`);
      await mkdir(folder, { recursive: true });
      const sink = folderSink(folder, (name, lines) => console.log(`${name}: ${lines.toLocaleString('en-US')} rows`));
      await app.get(ExportDeed).run(organizationActor(present.id, 'job'), sink);
      console.log(`"${present.name}" was exported to ${folder}.`);
      return 0;
    });
  },
};
