import { type ASTVisitor, type FragmentDefinitionNode, GraphQLError, Kind, type SelectionSetNode, type ValidationContext } from 'graphql';
import { platformProblems } from '../problems/platform.problems.js';

const MOST_DEEP = 12;
/** Half as many again as the largest page of ours asks for: the property. */
const MOST_FIELDS = 1200;

/** Refuses queries that nest too deep or ask for too many fields, fragments counted where they are spread. */
export function limitsRule(context: ValidationContext): ASTVisitor {
  const fragments = new Map<string, FragmentDefinitionNode>();
  for (const definition of context.getDocument().definitions)
    if (definition.kind === Kind.FRAGMENT_DEFINITION) fragments.set(definition.name.value, definition);
  let fields = 0;
  const deepest = (set: SelectionSetNode | undefined, within: readonly string[]): number => {
    let most = 0;
    for (const selection of set?.selections ?? []) {
      if (fields > MOST_FIELDS) return most;
      if (selection.kind === Kind.FRAGMENT_SPREAD) {
        const name = selection.name.value;
        if (!within.includes(name)) most = Math.max(most, deepest(fragments.get(name)?.selectionSet, [...within, name]));
      } else if (selection.kind === Kind.INLINE_FRAGMENT) most = Math.max(most, deepest(selection.selectionSet, within));
      else {
        fields += 1;
        most = Math.max(most, 1 + deepest(selection.selectionSet, within));
      }
    }
    return most;
  };
  const refuse = (details: { found: number; most: number; what: string }) => {
    const problem = platformProblems.tooDeep(details);
    context.reportError(new GraphQLError(problem.message, { extensions: { problem: problem.code, details } }));
  };
  return {
    OperationDefinition(operation) {
      const depth = deepest(operation.selectionSet, []);
      if (fields > MOST_FIELDS) refuse({ found: fields, most: MOST_FIELDS, what: 'fields' });
      else if (depth > MOST_DEEP) refuse({ found: depth, most: MOST_DEEP, what: 'levels' });
    },
  };
}
