import { Resolver } from '@nestjs/graphql';
import { keptThingResolver } from '../../../platform/kept-things/kept-thing.resolver.js';
import { judgeOrder, judgeValues, name, text } from '../../../platform/problems/judge-values.js';
import { filled } from '../../../platform/records/filled.js';
import { requireInUse } from '../../../platform/records/require-in-use.js';
import { BackflowAssemblyRow } from './backflow-assembly.entity.js';
import { BackflowAssemblyInput } from './backflow-assembly.input.js';
import { BackflowAssembly, showBackflowAssembly } from './backflow-assembly.type.js';

const Kept = keptThingResolver({
  name: 'BackflowAssembly',
  row: BackflowAssemblyRow,
  type: BackflowAssembly,
  input: BackflowAssemblyInput,
  show: showBackflowAssembly,
  keep: (input) => filled<BackflowAssemblyRow>(input, ['propertyId', 'name', 'location', 'kind', 'lastTestedOn', 'nextTestDueOn']),
  judge: async (tx, input) => {
    judgeValues(input, { name: name(), location: text, kind: text });
    judgeOrder('nextTestDueOn', input.lastTestedOn, input.nextTestDueOn, 'the last test');
    await requireInUse(tx, 'property', input.propertyId);
  },
});

/** Backflow assemblies: created, changed, retired. */
@Resolver(() => BackflowAssembly)
export class BackflowAssemblyResolver extends Kept {}
