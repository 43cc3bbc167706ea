import { graphql } from '../../../../graphql/__generated__/gql.js';
import { number, text, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment ClientFields on Client {
    id
    version
    retiredAt
    name
    emails
    language
    units
    notToExceed
  }
`);

const create = graphql(`
  mutation CreateClient($id: ID, $input: ClientInput!) {
    result: createClient(deviceRecordId: $id, input: $input) {
      __typename
      ... on Client {
        id
        version
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on NameTaken {
        name
      }
      ... on StillInUse {
        by
        count
      }
    }
  }
`);

const change = graphql(`
  mutation ChangeClient($id: ID!, $version: Int!, $input: ClientInput!) {
    result: changeClient(id: $id, version: $version, input: $input) {
      __typename
      ... on Client {
        id
        version
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on NameTaken {
        name
      }
      ... on StillInUse {
        by
        count
      }
    }
  }
`);

const retire = graphql(`
  mutation RetireClient($id: ID!, $version: Int!) {
    result: retireClient(id: $id, version: $version) {
      __typename
      ... on Client {
        id
        version
      }
      ... on ChangedMeanwhile {
        id
        version
        changedBy
        changedAt
      }
      ... on NameTaken {
        name
      }
      ... on StillInUse {
        by
        count
      }
    }
  }
`);

export const client: ThingKind = {
  name: 'client',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    { key: 'emails', kind: { is: 'emails' } },
    word('language', 'language', ['en', 'es']),
    word('units', 'units', ['us', 'metric']),
    number('notToExceed'),
  ],
};
