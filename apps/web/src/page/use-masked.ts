import type { FragmentType, TypedDocumentNode } from '@apollo/client';
import { useFragment } from '@apollo/client/react';

/**
 * What a component asked for of a thing that its parent fetched.
 *
 * The parent's query spreads the fragment, so the data is there before the component is drawn; that it is not is a fault of ours.
 */
export function useMasked<Data>(fragment: TypedDocumentNode<Data>, from: FragmentType<Data>): Data {
  const { data, complete, missing } = useFragment<Data>({ fragment, from: from as never });
  if (!complete) throw new Error(`The fragment was not fetched: ${JSON.stringify(missing)}`);
  return data as Data;
}
