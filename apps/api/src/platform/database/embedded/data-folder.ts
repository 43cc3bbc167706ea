import { createHash } from 'node:crypto';
import { accessSync, chownSync, constants, mkdirSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { StartProblem } from '../start-problem.js';
import { type Unprivileged, canEnter } from './unprivileged.js';

const checkout = path.resolve(import.meta.dirname, '../../../../../..');

/** What else of ours may stand there before the database does. */
const OURS: readonly string[] = ['rillbook-files', 'rillbook-uploads'];

/** Whether a folder is ours to give to the database's account: new, empty, or used by us before. */
const isOurs = (folder: string): boolean => {
  const things = readdirSync(folder);
  return things.includes('postgres') || things.every((thing) => OURS.includes(thing));
};

/** Makes a folder and its missing parents without closing the parents. */
function makeFolder(folder: string, user: Unprivileged | undefined): void {
  const refuse = (why: string): StartProblem =>
    new StartProblem(
      `The data folder ${folder} cannot be made or written (${why}). Set DATA_DIR to a folder that you may write, or DATABASE_URL to a PostgreSQL server.`,
    );
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.W_OK | constants.X_OK);
    if (user && isOurs(folder)) chownSync(folder, user.uid, user.gid);
  } catch (problem) {
    throw refuse(String((problem as NodeJS.ErrnoException).code));
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
