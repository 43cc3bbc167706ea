import { graphql } from '../../../../graphql/__generated__/gql.js';
import { plantsWords } from '@rillbook/agronomy/plants/plant-words.js';
import { irrigationMethods } from '@rillbook/irrigation/hardware/irrigation-method.js';
import { date, number, quantity, text, whole, word, words } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment WateringRuleFields on WateringRule {
    id
    version
    retiredAt
    supplierId
    name
    allowedDays
    daysPerWeek
    addressParity
    blockedFrom
    blockedUntil
    maxMinutes
    hoursAfterRain
    rainMm
    plants
    exemptMethods
    water
    effectiveFrom
    effectiveUntil
  }
`);

const create = graphql(`
  mutation CreateWateringRule($id: ID, $input: WateringRuleInput!) {
    result: createWateringRule(deviceRecordId: $id, input: $input) {
      __typename
      ... on WateringRule {
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
  mutation ChangeWateringRule($id: ID!, $version: Int!, $input: WateringRuleInput!) {
    result: changeWateringRule(id: $id, version: $version, input: $input) {
      __typename
      ... on WateringRule {
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
  mutation RetireWateringRule($id: ID!, $version: Int!) {
    result: retireWateringRule(id: $id, version: $version) {
      __typename
      ... on WateringRule {
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

export const rule: ThingKind = {
  name: 'rule',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    text('allowedDays'),
    whole('daysPerWeek'),
    word('addressParity', 'parity', ['odd', 'even']),
    { key: 'blockedFrom', kind: { is: 'time' } },
    { key: 'blockedUntil', kind: { is: 'time' } },
    number('maxMinutes'),
    number('hoursAfterRain'),
    quantity('rainMm', 'depth'),
    words('plants', 'plants', plantsWords),
    words('exemptMethods', 'method', irrigationMethods),
    words('water', 'water', ['potable', 'recycled', 'well']),
    date('effectiveFrom'),
    date('effectiveUntil'),
  ],
};
