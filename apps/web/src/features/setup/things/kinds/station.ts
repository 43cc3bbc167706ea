import { graphql } from '../../../../graphql/__generated__/gql.js';
import { number, quantity, text } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment WeatherStationFields on WeatherStation {
    id
    version
    retiredAt
    name
    latitude
    longitude
    elevationM
    lastDay
  }
`);

const create = graphql(`
  mutation CreateWeatherStation($id: ID, $input: WeatherStationInput!) {
    result: createWeatherStation(deviceRecordId: $id, input: $input) {
      __typename
      ... on WeatherStation {
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
  mutation ChangeWeatherStation($id: ID!, $version: Int!, $input: WeatherStationInput!) {
    result: changeWeatherStation(id: $id, version: $version, input: $input) {
      __typename
      ... on WeatherStation {
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
  mutation RetireWeatherStation($id: ID!, $version: Int!) {
    result: retireWeatherStation(id: $id, version: $version) {
      __typename
      ... on WeatherStation {
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

export const station: ThingKind = {
  name: 'station',
  create,
  change,
  retire,
  fields: [text('name', true), number('latitude', true), number('longitude', true), quantity('elevationM', 'length')],
};
