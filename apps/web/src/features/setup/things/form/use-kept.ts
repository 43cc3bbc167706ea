import type { TypedDocumentNode } from '@apollo/client';
import { useDeed } from '../../../../page/use-deed.js';
import { useRecordName } from '../../../../page/work/use-record-name.js';
import { type Outcome, outcomeOf, type ThingKind } from './outcome.js';

type Answer = { readonly result: { readonly __typename?: string } };
type Input = Readonly<Record<string, unknown>>;

export interface KeptDeeds {
  readonly create: (input: Input) => Promise<Outcome | null>;
  readonly change: (id: string, version: number, input: Input) => Promise<Outcome | null>;
  readonly retire: (id: string, version: number) => Promise<Outcome | null>;
  readonly isBusy: boolean;
  readonly problem: unknown;
}

/** The three deeds of a kind of kept thing; null where the server did not answer. A new one pressed again is the same one. */
export function useKept(kind: ThingKind, refetch: readonly string[]): KeptDeeds {
  const create = useDeed(kind.create as TypedDocumentNode<Answer, { id: string; input: Input }>, { refetch });
  const { nameOf } = useRecordName();
  const change = useDeed(kind.change as TypedDocumentNode<Answer, { id: string; version: number; input: Input }>, { refetch });
  const retire = useDeed(kind.retire as TypedDocumentNode<Answer, { id: string; version: number }>, { refetch });
  const told = (answer: Answer | null): Outcome | null => answer && outcomeOf(answer.result);
  return {
    create: async (input) => told(await create.run({ id: nameOf(input), input })),
    change: async (id, version, input) => told(await change.run({ id, version, input })),
    retire: async (id, version) => told(await retire.run({ id, version })),
    isBusy: create.isBusy || change.isBusy || retire.isBusy,
    problem: create.problem ?? change.problem ?? retire.problem,
  };
}
