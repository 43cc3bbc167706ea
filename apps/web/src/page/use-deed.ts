import type { OperationVariables, TypedDocumentNode } from '@apollo/client';
import { useMutation } from '@apollo/client/react';
import { useState } from 'react';

export interface Deed<Data, Variables> {
  /** Does it once at a time; null where it failed, and the problem is then to be shown. */
  readonly run: (variables: Variables) => Promise<Data | null>;
  readonly isBusy: boolean;
  readonly problem: unknown;
  readonly forget: () => void;
}

interface Options {
  /** Names of the queries that the deed makes old. */
  readonly refetch?: readonly string[];
}

/** A deed on the server whose failure is a value to show, never a lost promise. */
export function useDeed<Data, Variables extends OperationVariables>(
  document: TypedDocumentNode<Data, Variables>,
  { refetch = [] }: Options = {},
): Deed<Data, Variables> {
  const [mutate, { loading }] = useMutation(document, { refetchQueries: [...refetch], awaitRefetchQueries: false });
  const [problem, setProblem] = useState<unknown>(null);
  const run = async (variables: Variables): Promise<Data | null> => {
    setProblem(null);
    try {
      const { data } = await mutate({ variables } as never);
      return (data as Data | undefined) ?? null;
    } catch (error) {
      setProblem(error);
      return null;
    }
  };
  return { run, isBusy: loading, problem, forget: () => setProblem(null) };
}
