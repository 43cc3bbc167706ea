import type { Reporter, TestModule, TestSequencer, TestSpecification } from 'vitest/node';

/** What each file of tests has cost at most, from the first run of all of them on: loading it, and its tests. [ms] */
const costs = new Map<string, number>();

export const keepCosts: Reporter = {
  onTestModuleEnd(module: TestModule) {
    const { collectDuration, duration } = module.diagnostic();
    costs.set(module.moduleId, Math.max(costs.get(module.moduleId) ?? 0, collectDuration + duration));
  },
};

/** The first test that fails ends the run of a change: those that take long come last. */
export class QuickFirst implements TestSequencer {
  shard(files: TestSpecification[]) {
    return files;
  }

  sort(files: TestSpecification[]) {
    const costOf = ({ moduleId }: TestSpecification) => costs.get(moduleId) ?? 0;
    return [...files].sort((one, other) => costOf(one) - costOf(other));
  }
}
