import { graphql } from '../../../../graphql/__generated__/gql.js';
import { number, quantity, text, whole, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment ControllerFields on Controller {
    id
    version
    retiredAt
    propertyId
    name
    location
    stations
    programs
    startsPerProgram
    maxMinutes
    minuteStep
    adjustScope
    adjustStepPercent
    maxAdjustPercent
    monthlyAdjustPercent
    cycleSoak
    runsAtOnce
    masterValve
    rainSensor
    rainSensorMm
    flowSensor
  }
`);

const create = graphql(`
  mutation CreateController($id: ID, $input: ControllerInput!) {
    result: createController(deviceRecordId: $id, input: $input) {
      __typename
      ... on Controller {
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
  mutation ChangeController($id: ID!, $version: Int!, $input: ControllerInput!) {
    result: changeController(id: $id, version: $version, input: $input) {
      __typename
      ... on Controller {
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
  mutation RetireController($id: ID!, $version: Int!) {
    result: retireController(id: $id, version: $version) {
      __typename
      ... on Controller {
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

export const controller: ThingKind = {
  name: 'controller',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    text('location'),
    whole('stations', true),
    whole('programs'),
    whole('startsPerProgram'),
    number('maxMinutes'),
    number('minuteStep'),
    word('adjustScope', 'adjustScope', ['controller', 'program']),
    number('adjustStepPercent'),
    number('maxAdjustPercent'),
    { key: 'monthlyAdjustPercent', kind: { is: 'twelve', of: 'number' } },
    { key: 'cycleSoak', kind: { is: 'yesNo' } },
    whole('runsAtOnce'),
    { key: 'masterValve', kind: { is: 'yesNo' } },
    { key: 'rainSensor', kind: { is: 'yesNo' } },
    quantity('rainSensorMm', 'depth'),
    { key: 'flowSensor', kind: { is: 'yesNo' } },
  ],
};
