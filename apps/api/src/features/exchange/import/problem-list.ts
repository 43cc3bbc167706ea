import type { Problem } from '../problems/problem.js';

/** How many problems an import keeps; the others are counted. */
export const FIRST_PROBLEMS = 200;

/** Keeps the first problems and counts all of them. */
export class ProblemList {
  readonly first: Problem[] = [];
  total = 0;

  /**
   * @param room how many may still be kept, shared by the lists of one import
   */
  constructor(private readonly room: { left: number }) {}

  add(problems: readonly Problem[]): void {
    this.total += problems.length;
    for (const problem of problems) {
      if (this.room.left <= 0) return;
      this.room.left -= 1;
      this.first.push(problem);
    }
  }
}
