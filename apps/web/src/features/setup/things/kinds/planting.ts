import { graphql } from '../../../../graphql/__generated__/gql.js';
import { waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { date, number, text, thing, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment PlantingFields on Planting {
    id
    version
    retiredAt
    zoneId
    species
    coverPercent
    waterNeed
    plantedOn
  }
`);

const create = graphql(`
  mutation CreatePlanting($id: ID, $input: PlantingInput!) {
    result: createPlanting(deviceRecordId: $id, input: $input) {
      __typename
      ... on Planting {
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
  mutation ChangePlanting($id: ID!, $version: Int!, $input: PlantingInput!) {
    result: changePlanting(id: $id, version: $version, input: $input) {
      __typename
      ... on Planting {
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
  mutation RetirePlanting($id: ID!, $version: Int!) {
    result: retirePlanting(id: $id, version: $version) {
      __typename
      ... on Planting {
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

export const planting: ThingKind = {
  name: 'planting',
  create,
  change,
  retire,
  fields: [thing('zoneId', true), text('species', true), number('coverPercent'), word('waterNeed', 'need', waterNeeds), date('plantedOn')],
};
