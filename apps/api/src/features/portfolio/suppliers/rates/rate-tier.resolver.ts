import { volumeUnits } from '@rillbook/units/volume.js';
import { Resolver } from '@nestjs/graphql';
import { keptThingResolver } from '../../../../platform/kept-things/kept-thing.resolver.js';
import { above, between, judgeValues, oneOf } from '../../../../platform/problems/judge-values.js';
import { platformProblems } from '../../../../platform/problems/platform.problems.js';
import { filled } from '../../../../platform/records/filled.js';
import { requireInUse } from '../../../../platform/records/require-in-use.js';
import { RateTierRow } from './rate-tier.entity.js';
import { RateTierInput } from './rate-tier.input.js';
import { RateTier, showRateTier } from './rate-tier.type.js';
import { upToIsWords } from './up-to-is.js';

const RULES = {
  fixed: between(0, 1e8),
  tier: between(1, 100),
  upTo: above(0, 1e12),
  upToIs: oneOf(...upToIsWords),
  unit: oneOf(...volumeUnits),
  price: between(0, 1e8),
};

function judgeEnd(input: RateTierInput): void {
  const { upTo = null, upToIs = null } = input;
  if ((upTo === null) === (upToIs === null)) return;
  throw platformProblems.valueRefused({
    field: upTo === null ? 'upTo' : 'upToIs',
    found: null,
    expected: 'where the tier ends together with what that counts (volume, share of allowance), or neither for the last tier',
  });
}

const Kept = keptThingResolver({
  name: 'RateTier',
  row: RateTierRow,
  type: RateTier,
  input: RateTierInput,
  show: showRateTier,
  keep: (input) => filled<RateTierRow>(input, ['supplierId', 'effectiveFrom', 'fixed', 'tier', 'upTo', 'upToIs', 'unit', 'price']),
  called: (input) => `tier ${input.tier} from ${input.effectiveFrom}`,
  judge: async (tx, input) => {
    judgeValues(input, RULES);
    judgeEnd(input);
    await requireInUse(tx, 'water_supplier', input.supplierId);
  },
});

/** Rate tiers: created, changed, retired. */
@Resolver(() => RateTier)
export class RateTierResolver extends Kept {}
