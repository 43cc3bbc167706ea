import { type ASTVisitor, type FragmentDefinitionNode, GraphQLError, Kind, type SelectionSetNode, type ValidationContext } from 'graphql';
import { platformProblems } from '../problems/platform.problems.js';

const MOST_DEEP = 12;
/** Half as many again as the largest page of ours asks for: the property. */
const MOST_FIELDS = 1200;
/** Three times what the largest page of ours asks for at once: each is work of its own, under another name too. */
const MOST_QUESTIONS = 20;

interface Extent {
  readonly depth: number;
  readonly fields: number;
  /** fields at the top of the set */
  readonly questions: number;
}

const NOTHING: Extent = { depth: 0, fields: 0, questions: 0 };

/**
 * What a set of selections asks for, fragments counted where they are spread. Each fragment is measured once: spread twice in
 * one another, thirty of them would otherwise be walked a thousand million times.
 */
class Extents {
  private readonly fragments = new Map<string, FragmentDefinitionNode>();
  private readonly measured = new Map<string, Extent>();

  constructor(context: ValidationContext) {
    for (const definition of context.getDocument().definitions)
      if (definition.kind === Kind.FRAGMENT_DEFINITION) this.fragments.set(definition.name.value, definition);
  }

  of(set: SelectionSetNode | undefined): Extent {
    let [depth, fields, questions] = [0, 0, 0];
    for (const selection of set?.selections ?? []) {
      const within = selection.kind === Kind.FRAGMENT_SPREAD ? this.ofFragment(selection.name.value) : this.of(selection.selectionSet);
      const own = selection.kind === Kind.FIELD ? 1 : 0;
      depth = Math.max(depth, within.depth + own);
      fields += within.fields + own;
      questions += own || within.questions;
    }
    return { depth, fields, questions };
  }

  private ofFragment(name: string): Extent {
    const known = this.measured.get(name);
    if (known) return known;
    // One that spreads itself is refused by GraphQL's own rules; here it only has to end.
    this.measured.set(name, NOTHING);
    const extent = this.of(this.fragments.get(name)?.selectionSet);
    this.measured.set(name, extent);
    return extent;
  }
}

/** Refuses queries that nest too deep, ask for too many fields, or too many things at once, fragments counted where they are spread. */
export function limitsRule(context: ValidationContext): ASTVisitor {
  const extents = new Extents(context);
  const refuse = (details: { found: number; most: number; what: string }) => {
    const problem = platformProblems.tooDeep(details);
    context.reportError(new GraphQLError(problem.message, { extensions: { problem: problem.code, details } }));
  };
  return {
    OperationDefinition(operation) {
      const { depth, fields, questions } = extents.of(operation.selectionSet);
      if (fields > MOST_FIELDS) refuse({ found: fields, most: MOST_FIELDS, what: 'fields' });
      else if (depth > MOST_DEEP) refuse({ found: depth, most: MOST_DEEP, what: 'levels' });
      else if (questions > MOST_QUESTIONS) refuse({ found: questions, most: MOST_QUESTIONS, what: 'questions' });
    },
  };
}
