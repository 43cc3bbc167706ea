import type { FragmentType, TypedDocumentNode } from '@apollo/client';
import { useApolloClient, useFragment } from '@apollo/client/react';
import { type DocumentNode, Kind } from 'graphql';
import { useRef } from 'react';

/** The fragment itself stands first; those that it spreads follow. */
function nameOf({ definitions }: DocumentNode): string {
  const own = definitions.find((definition) => definition.kind === Kind.FRAGMENT_DEFINITION);
  if (!own) throw new Error('The document holds no fragment.');
  return own.name.value;
}

interface Found<Data> {
  readonly data: Data;
  readonly complete: boolean;
  readonly missing?: unknown;
}

/**
 * What was found, and while it is not whole, what was whole of the same things before.
 *
 * Another query may bring a new part of a thing with fewer fields than are drawn here (a report's first mail, by the list's query);
 * the query that spreads the fragment then asks again by itself, and what was drawn stays until its answer is there.
 */
function useWhole<Data>({ data, complete, missing }: Found<unknown>, of: string): Data {
  const last = useRef<{ readonly of: string; readonly data: Data } | null>(null);
  if (complete) last.current = { of, data: data as Data };
  if (last.current?.of !== of) throw new Error(`The fragment was not fetched: ${JSON.stringify(missing)}`);
  return last.current.data;
}

/**
 * What a component asked for of a thing that its parent fetched.
 *
 * The parent's query spreads the fragment, so the data is there before the component is drawn; that it is not is a fault of ours.
 */
export function useMasked<Data>(fragment: TypedDocumentNode<Data>, from: FragmentType<Data>): Data {
  const { cache } = useApolloClient();
  const found = useFragment<Data>({ fragment, fragmentName: nameOf(fragment), from: from as never });
  return useWhole(found as Found<unknown>, String(cache.identify(from as never)));
}

/** The same of several things. */
export function useMaskedList<Data>(fragment: TypedDocumentNode<Data>, from: readonly FragmentType<Data>[]): readonly Data[] {
  const { cache } = useApolloClient();
  const found = useFragment<Data>({ fragment, fragmentName: nameOf(fragment), from: [...from] as never[] });
  return useWhole(found as Found<unknown>, from.map((one) => cache.identify(one as never)).join());
}
