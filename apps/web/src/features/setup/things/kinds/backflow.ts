import { graphql } from '../../../../graphql/__generated__/gql.js';
import { date, text } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment BackflowAssemblyFields on BackflowAssembly {
    id
    version
    retiredAt
    propertyId
    name
    kind
    location
    lastTestedOn
    nextTestDueOn
  }
`);

const create = graphql(`
  mutation CreateBackflowAssembly($id: ID, $input: BackflowAssemblyInput!) {
    result: createBackflowAssembly(deviceRecordId: $id, input: $input) {
      __typename
      ... on BackflowAssembly {
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
  mutation ChangeBackflowAssembly($id: ID!, $version: Int!, $input: BackflowAssemblyInput!) {
    result: changeBackflowAssembly(id: $id, version: $version, input: $input) {
      __typename
      ... on BackflowAssembly {
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
  mutation RetireBackflowAssembly($id: ID!, $version: Int!) {
    result: retireBackflowAssembly(id: $id, version: $version) {
      __typename
      ... on BackflowAssembly {
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

export const backflow: ThingKind = {
  name: 'backflow',
  create,
  change,
  retire,
  fields: [text('name', true), text('kind'), text('location'), date('lastTestedOn'), date('nextTestDueOn')],
};
