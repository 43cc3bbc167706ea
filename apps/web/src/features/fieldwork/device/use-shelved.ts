import type { ApolloClient, OperationVariables, TypedDocumentNode } from '@apollo/client';
import { useApolloClient, useQuery } from '@apollo/client/react';
import { useCallback, useEffect, useLayoutEffect, useRef, useState, useSyncExternalStore } from 'react';
import { Kind, print } from 'graphql';
import { problemOf } from '../../../graphql/problem.js';
import type { Operation } from '../../../offline/operation.js';
import { useOutbox, usePhone } from '../../../offline/PhoneProvider.js';
import type { Phone } from '../../../offline/phone.js';
import { ask } from './ask.js';
import { useField } from './FieldPhone.js';
import { withOutbox } from './with-outbox.js';

const forms = new WeakMap<object, string>();

/** The form of a question as a short word: what an older version of the pages asked is not an answer to what this one asks (FNV-1a, 32 bits). */
function formOf(document: TypedDocumentNode<never, never>): string {
  const known = forms.get(document);
  if (known !== undefined) return known;
  let hash = 0x811c9dc5;
  for (const sign of print(document)) hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 0x01000193);
  const form = (hash >>> 0).toString(36);
  forms.set(document, form);
  return form;
}

/** The name of an answer on the shelf: the question, its form, and what it was asked about. */
export function shelfName(document: TypedDocumentNode<never, never>, variables: OperationVariables): string {
  const operation = document.definitions.find((one) => one.kind === Kind.OPERATION_DEFINITION);
  return `${operation?.name?.value ?? ''} ${formOf(document)} ${JSON.stringify(variables)}`;
}

/** Fetches an answer and puts it on the shelf. */
export async function fetchToShelf<Data, Variables extends OperationVariables>(
  client: ApolloClient,
  phone: Phone,
  document: TypedDocumentNode<Data, Variables>,
  variables: Variables,
  now: () => Date,
): Promise<void> {
  const askedAt = now().toISOString();
  const data = await ask(client, document, variables);
  const name = shelfName(document as never, variables);
  // What the person works on is not taken out of their hands while the server does not have all of it.
  if (isGone(data) && phone.outbox.operations.some(isUnsent)) return;
  await phone.shelve(name, data, askedAt);
}

const isGone = (data: unknown): boolean => Object.values((data ?? {}) as object).every((value) => value === null);
/** What the server cannot have told of: what it does not have, or had only after it was asked. */
const since = (operations: readonly Operation[], at: string): readonly Operation[] =>
  operations.filter(({ state, sentAt }) => state !== 'sent' || sentAt === null || sentAt > at);

const isUnsent = ({ state }: Operation): boolean => state !== 'sent';

interface Shelved<Data> {
  readonly data: Data | undefined;
  readonly error: unknown;
  readonly refetch: () => Promise<unknown>;
  /** When the server last told; null where it never did. */
  readonly toldAt: string | null;
}

/**
 * What the server told, from the phone's shelf, with what was saved here since laid over it; asked anew when the page opens and when
 * something was sent. Without signal it is what was told last.
 */
export function useShelved<Data, Variables extends OperationVariables>(
  document: TypedDocumentNode<Data, Variables>,
  variables: Variables,
): Shelved<Data> {
  const client = useApolloClient();
  const phone = usePhone();
  const outbox = useOutbox();
  const { now } = useField().clock;
  const name = shelfName(document as never, variables);
  const row = useSyncExternalStore(phone.subscribe, () => phone.shelved(name));
  const [problem, setProblem] = useState<unknown>(undefined);
  const given = JSON.stringify(variables);
  const refetch = useCallback(async () => {
    try {
      await fetchToShelf(client, phone, document, JSON.parse(given) as Variables, now);
      setProblem(undefined);
    } catch (thrown) {
      setProblem(thrown);
    }
  }, [client, phone, document, given, now]);
  const { lastSentAt, operations } = outbox;
  useEffect(() => {
    void refetch();
  }, [refetch, lastSentAt]);
  const write = useCallback(
    (options: { readonly broadcast?: boolean } = {}): void => {
      if (!row) return;
      const data = withOutbox(row.data, since(operations, row.at)) as never;
      client.writeQuery({ query: document, variables: JSON.parse(given) as Variables, data, ...options });
    },
    [client, document, given, row, operations],
  );
  // What is on the phone when the page opens is there when it is drawn first, and need not be written again after.
  const [first] = useState(() => {
    write({ broadcast: false });
    return write;
  });
  const written = useRef(first);
  useLayoutEffect(() => {
    if (written.current === write) return;
    written.current = write;
    write();
  }, [write]);
  const { data } = useQuery(document, { variables, fetchPolicy: 'cache-only' } as never);
  const isOffline = row !== null && problem !== undefined && problemOf(problem).kind === 'noAnswer';
  return { data: row ? (data as Data | undefined) : undefined, error: isOffline ? undefined : problem, refetch, toldAt: row?.at ?? null };
}
