import { type ASTVisitor, GraphQLError, type ValidationContext } from 'graphql';
import { platformProblems } from '../problems/platform.problems.js';

/** Refuses numbers that no double can hold, such as 1e400: read as a double they would be infinite. */
export function finiteNumbersRule(context: ValidationContext): ASTVisitor {
  const judge = ({ value }: { readonly value: string }): void => {
    if (Number.isFinite(Number(value))) return;
    const problem = platformProblems.valueRefused({ field: 'number', found: value.slice(0, 80), expected: 'a number below 1.8e308' });
    context.reportError(new GraphQLError(problem.message, { extensions: { problem: problem.code, details: problem.details } }));
  };
  return { FloatValue: judge, IntValue: judge };
}
