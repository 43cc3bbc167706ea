import { readFileSync } from 'node:fs';
import path from 'node:path';
import { ApolloClient, ApolloLink, InMemoryCache } from '@apollo/client';
import { buildSchema, type ExecutionResult, graphql, GraphQLError, print } from 'graphql';
import { Observable } from 'rxjs';

const schema = buildSchema(readFileSync(path.resolve(import.meta.dirname, '../../../schema.graphql'), 'utf8'));

/** What answers a field of the root: a value, or a function of its arguments. */
export type Answers = Readonly<Record<string, unknown>>;

export interface Call {
  readonly name: string;
  readonly variables: Readonly<Record<string, unknown>>;
}

/** A refusal as the server words it. */
export const refusal = (code: string, message: string): GraphQLError => new GraphQLError(message, { extensions: { code } });

/**
 * A client whose answers are built in the test and executed against the contract: a document that asks for what is not there, or an answer
 * that lacks what must be there, fails as it would on the wire. Objects of a union carry their `__typename`.
 */
export function fakeServer(answers: Answers): { client: ApolloClient; calls: Call[] } {
  const calls: Call[] = [];
  const link = new ApolloLink(
    ({ operationName, query, variables }) =>
      new Observable<ExecutionResult>((observer) => {
        calls.push({ name: operationName ?? '', variables });
        void graphql({ schema, source: print(query), rootValue: answers, variableValues: variables }).then((result) => {
          observer.next(result);
          observer.complete();
        });
      }) as never,
  );
  return { calls, client: new ApolloClient({ link, cache: new InMemoryCache(), dataMasking: true }) };
}
