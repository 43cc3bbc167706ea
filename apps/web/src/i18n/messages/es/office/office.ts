import { card } from './card.js';
import { findings } from './findings.js';
import { identity } from './identity.js';
import { overview } from './overview.js';
import { plan } from './plan.js';
import { property } from './property.js';
import { reports } from './reports.js';
import { ruleChange } from './rule-change.js';
import { says } from './says.js';
import { whatIf } from './what-if.js';
import { words } from './words.js';

/** The words of the office's pages. */
export const office = {
  ...words,
  ...says,
  ...identity,
  ...overview,
  ...property,
  ...plan,
  ...card,
  ...ruleChange,
  ...whatIf,
  ...findings,
  ...reports,
};
