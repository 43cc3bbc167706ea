import { ApolloLink, type ApolloClient, type OperationVariables, type TypedDocumentNode } from '@apollo/client';
import { CombinedGraphQLErrors } from '@apollo/client/errors';
import { firstValueFrom } from 'rxjs';

/** Asks the server past the cache and gets the whole answer, as it is put on the phone's shelf. */
export async function ask<Data, Variables extends OperationVariables>(
  client: ApolloClient,
  document: TypedDocumentNode<Data, Variables>,
  variables: Variables,
): Promise<unknown> {
  const query = client.cache.transformDocument(document);
  const result = await firstValueFrom(ApolloLink.execute(client.link, { query, variables }, { client }));
  if (result.errors?.length) throw new CombinedGraphQLErrors(result as never);
  return result.data;
}
