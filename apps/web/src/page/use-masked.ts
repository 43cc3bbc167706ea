import type { FragmentType, TypedDocumentNode } from '@apollo/client';
import { useFragment } from '@apollo/client/react';
import { type DocumentNode, Kind } from 'graphql';

/** The fragment itself stands first; those that it spreads follow. */
function nameOf({ definitions }: DocumentNode): string {
  const own = definitions.find((definition) => definition.kind === Kind.FRAGMENT_DEFINITION);
  if (!own) throw new Error('The document holds no fragment.');
  return own.name.value;
}

/**
 * What a component asked for of a thing that its parent fetched.
 *
 * The parent's query spreads the fragment, so the data is there before the component is drawn; that it is not is a fault of ours.
 */
export function useMasked<Data>(fragment: TypedDocumentNode<Data>, from: FragmentType<Data>): Data {
  const { data, complete, missing } = useFragment<Data>({ fragment, fragmentName: nameOf(fragment), from: from as never });
  if (!complete) throw new Error(`The fragment was not fetched: ${JSON.stringify(missing)}`);
  return data as Data;
}

/** The same of several things. */
export function useMaskedList<Data>(fragment: TypedDocumentNode<Data>, from: readonly FragmentType<Data>[]): readonly Data[] {
  const { data, complete, missing } = useFragment<Data>({ fragment, fragmentName: nameOf(fragment), from: [...from] as never[] });
  if (!complete) throw new Error(`The fragment was not fetched: ${JSON.stringify(missing)}`);
  return data as unknown as readonly Data[];
}
