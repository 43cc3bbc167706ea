import type { PortfolioLine } from './portfolio.repository.js';
import { PortfolioSums } from './portfolio.type.js';

const sum = (lines: readonly PortfolioLine[], of: (line: PortfolioLine) => number | null): number =>
  lines.reduce((total, line) => total + (of(line) ?? 0), 0);

/** What the properties add up to that surely took more than their plants needed; settings and unexplained apart. */
export function portfolioSums(lines: readonly PortfolioLine[]): PortfolioSums {
  const more = lines.filter((line) => line.sure === 'more');
  const priced = more.every((line) => line.aboveNeedMoney !== null);
  return Object.assign(new PortfolioSums(), {
    properties: lines.length,
    overProperties: more.length,
    aboveNeedLitres: sum(more, (line) => line.aboveNeedL),
    aboveNeedMoney: priced ? sum(more, (line) => line.aboveNeedMoney) : null,
    settingsLitres: sum(more, (line) => (line.overL === null ? null : line.overL - (line.underL ?? 0))),
    unexplainedLitres: sum(more, (line) => line.unexplainedL),
    unsplitLitres: sum(more, (line) => (line.unexplainedL === null ? line.aboveNeedL : null)),
    underProperties: lines.filter((line) => line.sure === 'less').length,
    notCounted: lines.filter((line) => !line.counted).length,
  });
}
