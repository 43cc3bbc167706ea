import type { TestApp } from './test-app.js';

/** Counts the statements that the application sends while something is done. */
export async function countStatements(source: TestApp['source'], work: () => Promise<unknown>): Promise<number> {
  const { logger } = source;
  const { logQuery } = logger;
  let count = 0;
  logger.logQuery = () => void (count += 1);
  try {
    await work();
  } finally {
    logger.logQuery = logQuery;
  }
  return count;
}
