import type { DocumentNode } from 'graphql';
import type { FieldSpec } from '../fields/field-spec.js';

/** What comes of creating, changing or retiring a kept thing, whatever its kind: the thing itself, or why not. */
export type Outcome =
  | {
      readonly __typename: 'ChangedMeanwhile';
      readonly id: string;
      readonly version: number;
      readonly changedBy?: string | null;
      readonly changedAt?: string | null;
    }
  | { readonly __typename: 'NameTaken'; readonly name: string }
  | { readonly __typename: 'StillInUse'; readonly by: string; readonly count: number }
  | { readonly __typename: 'Kept'; readonly id: string };

const UNKEPT = ['ChangedMeanwhile', 'NameTaken', 'StillInUse'];

/** An answer of the server; any type that is not one of the refusals is the thing. */
export const outcomeOf = (answer: { readonly __typename?: string }): Outcome =>
  UNKEPT.includes(answer.__typename ?? '') ? (answer as Outcome) : ({ ...answer, __typename: 'Kept' } as Outcome);

/** One kind of kept thing: its fields, and its three deeds, each under the alias `result`. */
export interface ThingKind {
  /** Its messages: `setup.thing.<name>`. */
  readonly name:
    | 'client'
    | 'property'
    | 'meter'
    | 'controller'
    | 'zone'
    | 'planting'
    | 'backflow'
    | 'supplier'
    | 'rule'
    | 'rate'
    | 'station'
    | 'crew';
  readonly fields: readonly FieldSpec[];
  readonly create: DocumentNode;
  readonly change: DocumentNode;
  readonly retire: DocumentNode;
}
