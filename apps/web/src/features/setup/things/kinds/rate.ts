import { graphql } from '../../../../graphql/__generated__/gql.js';
import { volumeUnits } from '@rillbook/units/volume.js';
import { date, number, whole, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment RateTierFields on RateTier {
    id
    version
    retiredAt
    supplierId
    effectiveFrom
    fixed
    tier
    upTo
    upToIs
    unit
    price
  }
`);

const create = graphql(`
  mutation CreateRateTier($id: ID, $input: RateTierInput!) {
    result: createRateTier(deviceRecordId: $id, input: $input) {
      __typename
      ... on RateTier {
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
  mutation ChangeRateTier($id: ID!, $version: Int!, $input: RateTierInput!) {
    result: changeRateTier(id: $id, version: $version, input: $input) {
      __typename
      ... on RateTier {
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
  mutation RetireRateTier($id: ID!, $version: Int!) {
    result: retireRateTier(id: $id, version: $version) {
      __typename
      ... on RateTier {
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

export const rate: ThingKind = {
  name: 'rate',
  create,
  change,
  retire,
  fields: [
    date('effectiveFrom', true),
    whole('tier', true),
    number('price', true),
    word('unit', 'meterUnit', volumeUnits, true),
    number('upTo'),
    word('upToIs', 'upToIs', ['volume', 'share of allowance']),
    number('fixed'),
  ],
};
