import { createHash } from 'node:crypto';
import { accessSync, chownSync, constants, existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import { StartProblem } from '../start-problem.js';
import { type Unprivileged, canEnter } from './unprivileged.js';

const checkout = path.resolve(import.meta.dirname, '../../../../../..');

/** Makes a folder and its missing parents without closing the parents. */
function makeFolder(folder: string, user: Unprivileged | undefined): void {
  try {
    mkdirSync(path.dirname(folder), { recursive: true });
    if (!existsSync(folder)) mkdirSync(folder, { mode: 0o755 });
    accessSync(folder, constants.W_OK);
    if (user) chownSync(folder, user.uid, user.gid);
  } catch (problem) {
    throw new StartProblem(
      `The data folder ${folder} cannot be made or written (${(problem as NodeJS.ErrnoException).code}). Set DATA_DIR to a folder that you may write, or DATABASE_URL to a PostgreSQL server.`,
    );
  }
}

/**
 * The folder where Rillbook keeps its database and files, made if it is not there.
 *
 * DATA_DIR decides. Without it: `.data` in the checkout; or, for root in a checkout that the database's own
 * account cannot enter, a folder under /var/lib named after the checkout.
 *
 * @throws {StartProblem} when the folder cannot be used, saying what to set
 */
export function dataFolder(wish: string | undefined, user: Unprivileged | undefined): string {
  const folder = path.resolve(wish || path.join(checkout, '.data'));
  makeFolder(folder, user);
  if (!user || canEnter(user, folder)) return folder;
  if (wish)
    throw new StartProblem(
      `The data folder ${folder} cannot be entered by the account that runs the database (uid ${user.uid}): a folder above it is private to root. Set DATA_DIR to a folder such as /var/lib/rillbook.`,
    );
  const instead = `/var/lib/rillbook-${createHash('sha256').update(checkout).digest('hex').slice(0, 8)}`;
  makeFolder(instead, user);
  if (!canEnter(user, instead))
    throw new StartProblem(
      `Neither ${folder} nor ${instead} can be entered by the account that runs the database (uid ${user.uid}). Set DATA_DIR.`,
    );
  return instead;
}
