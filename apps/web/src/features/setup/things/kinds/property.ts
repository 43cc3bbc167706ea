import { graphql } from '../../../../graphql/__generated__/gql.js';
import { number, quantity, text, thing, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment PropertyFields on Property {
    id
    version
    retiredAt
    name
    address
    city
    latitude
    longitude
    elevationM
    timeZone
    allowanceFrom
    allowanceEtaf
    allowanceLitresPerMonth
    specialLandscapeAreaM2
    notes
  }
`);

const create = graphql(`
  mutation CreateProperty($id: ID, $input: PropertyInput!) {
    result: createProperty(deviceRecordId: $id, input: $input) {
      __typename
      ... on Property {
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
  mutation ChangeProperty($id: ID!, $version: Int!, $input: PropertyInput!) {
    result: changeProperty(id: $id, version: $version, input: $input) {
      __typename
      ... on Property {
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
  mutation RetireProperty($id: ID!, $version: Int!) {
    result: retireProperty(id: $id, version: $version) {
      __typename
      ... on Property {
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

export const property: ThingKind = {
  name: 'property',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    thing('clientId', true),
    text('address'),
    text('city'),
    text('timeZone', true),
    number('latitude'),
    number('longitude'),
    quantity('elevationM', 'length'),
    thing('waterSupplierId'),
    thing('weatherStationId'),
    word('allowanceFrom', 'allowance', ['ordinance', 'contract']),
    number('allowanceEtaf'),
    { key: 'allowanceLitresPerMonth', kind: { is: 'twelve', of: 'volume' } },
    quantity('specialLandscapeAreaM2', 'area'),
    { key: 'notes', kind: { is: 'lines' } },
  ],
};
