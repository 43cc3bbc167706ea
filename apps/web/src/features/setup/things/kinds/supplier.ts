import { graphql } from '../../../../graphql/__generated__/gql.js';
import { text } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment WaterSupplierFields on WaterSupplier {
    id
    version
    retiredAt
    name
  }
`);

const create = graphql(`
  mutation CreateWaterSupplier($id: ID, $input: WaterSupplierInput!) {
    result: createWaterSupplier(deviceRecordId: $id, input: $input) {
      __typename
      ... on WaterSupplier {
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
  mutation ChangeWaterSupplier($id: ID!, $version: Int!, $input: WaterSupplierInput!) {
    result: changeWaterSupplier(id: $id, version: $version, input: $input) {
      __typename
      ... on WaterSupplier {
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
  mutation RetireWaterSupplier($id: ID!, $version: Int!) {
    result: retireWaterSupplier(id: $id, version: $version) {
      __typename
      ... on WaterSupplier {
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

export const supplier: ThingKind = {
  name: 'supplier',
  create,
  change,
  retire,
  fields: [text('name', true)],
};
