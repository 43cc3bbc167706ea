import { graphql } from '../../../../graphql/__generated__/gql.js';
import { volumeUnits } from '@rillbook/units/volume.js';
import { date, number, quantity, text, whole, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment MeterFields on Meter {
    id
    version
    retiredAt
    propertyId
    name
    kind
    water
    unit
    multiplier
    digits
    resolution
    sizeMm
    maxLPerMin
    pressureKpa
    indoorLPerDay
    pricePerUnit
    installedOn
    firstRegister
    removedOn
    lastRegister
  }
`);

const create = graphql(`
  mutation CreateMeter($id: ID, $input: MeterInput!) {
    result: createMeter(deviceRecordId: $id, input: $input) {
      __typename
      ... on Meter {
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
  mutation ChangeMeter($id: ID!, $version: Int!, $input: MeterInput!) {
    result: changeMeter(id: $id, version: $version, input: $input) {
      __typename
      ... on Meter {
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
  mutation RetireMeter($id: ID!, $version: Int!) {
    result: retireMeter(id: $id, version: $version) {
      __typename
      ... on Meter {
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

export const meter: ThingKind = {
  name: 'meter',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    word('kind', 'meter', ['irrigation', 'mixed'], true),
    word('water', 'water', ['potable', 'recycled', 'well'], true),
    word('unit', 'meterUnit', volumeUnits, true),
    number('multiplier', true),
    whole('digits'),
    number('resolution'),
    quantity('sizeMm', 'depth'),
    quantity('maxLPerMin', 'flow'),
    quantity('pressureKpa', 'pressure'),
    quantity('indoorLPerDay', 'volume'),
    number('pricePerUnit'),
    date('installedOn'),
    number('firstRegister'),
    date('removedOn'),
    number('lastRegister'),
  ],
};
