import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { configure } from '@testing-library/react';
import type { ReactNode } from 'react';
import { FieldPhone } from '../../../apps/web/src/features/fieldwork/device/FieldPhone.js';
import { drawPage } from '../support/draw-page.js';
import { me } from './built-stop.js';

// A page of the field first opens what the phone holds.
configure({ asyncUtilTimeout: 10_000 });

/** An empty phone. What is in the store of a test before it is gone. */
export function freshPhone(): void {
  globalThis.indexedDB = new IDBFactory();
  localStorage.clear();
  sessionStorage.clear();
}

interface Sent {
  readonly key: string;
  readonly kind: string;
  readonly body: string;
}

/** A server that takes all that is sent. */
export const takesAll = ({ operations }: { readonly operations: readonly Sent[] }) =>
  operations.map(({ key }) => ({ key, verdict: 'applied', problem: null, other: null }));

/** Draws a page of the field on this phone. */
export const drawAtPhone = (page: ReactNode, { answers = {}, ...options }: Parameters<typeof drawPage>[1] = {}) =>
  drawPage(<FieldPhone>{page}</FieldPhone>, { ...options, answers: { me, sendFieldwork: takesAll, ...answers } });

type Calls = readonly { readonly name: string; readonly variables: Readonly<Record<string, unknown>> }[];

/** What was sent of a kind, in its order, each as often as it was sent. */
export const sentOf = (calls: Calls, kind: string): readonly (Record<string, unknown> & { readonly key: string })[] =>
  calls
    .filter(({ name }) => name === 'SendFieldwork')
    .flatMap(({ variables }) => variables['operations'] as readonly Sent[])
    .filter((one) => one.kind === kind)
    .map(({ key, body }) => ({ key, ...(JSON.parse(body) as Record<string, unknown>) }));
