import { ApolloLink, type ApolloClient, type OperationVariables, type TypedDocumentNode } from '@apollo/client';
import { CombinedGraphQLErrors } from '@apollo/client/errors';
import { type DocumentNode, visit } from 'graphql';
import { firstValueFrom, timeout } from 'rxjs';

/** How long a download may take: a stop with all that its steps show is larger than what is asked for it. [ms] */
const DOWNLOAD_MS = 60_000;

/** As the contract has it: masking is between the cache and the components, and no word of the server's. */
const withoutMasks = (document: DocumentNode): DocumentNode =>
  visit(document, { Directive: ({ name }) => (name.value === 'unmask' ? null : undefined) });

/**
 * Asks the server past the cache and gets the whole answer, as it is put on the phone's shelf. What is not answered in time is given up, and the
 * line with it.
 */
export async function ask<Data, Variables extends OperationVariables>(
  client: ApolloClient,
  document: TypedDocumentNode<Data, Variables>,
  variables: Variables,
  limitMs: number = DOWNLOAD_MS,
): Promise<unknown> {
  const query = withoutMasks(client.cache.transformDocument(document));
  const answer = ApolloLink.execute(client.link, { query, variables }, { client });
  const result = await firstValueFrom(answer.pipe(timeout(limitMs)));
  if (result.errors?.length) throw new CombinedGraphQLErrors(result as never);
  return result.data;
}
