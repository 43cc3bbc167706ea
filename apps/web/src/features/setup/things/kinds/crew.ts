import { graphql } from '../../../../graphql/__generated__/gql.js';
import { number, text, whole } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment CrewFields on Crew {
    id
    version
    retiredAt
    name
    skills
    startLatitude
    startLongitude
    workingDays
    dayStartsMinute
    dayEndsMinute
    breakMinutes
  }
`);

const create = graphql(`
  mutation CreateCrew($id: ID, $input: CrewInput!) {
    result: createCrew(deviceRecordId: $id, input: $input) {
      __typename
      ... on Crew {
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
  mutation ChangeCrew($id: ID!, $version: Int!, $input: CrewInput!) {
    result: changeCrew(id: $id, version: $version, input: $input) {
      __typename
      ... on Crew {
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
  mutation RetireCrew($id: ID!, $version: Int!) {
    result: retireCrew(id: $id, version: $version) {
      __typename
      ... on Crew {
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

export const crew: ThingKind = {
  name: 'crew',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    { key: 'memberIds', kind: { is: 'things' } },
    { key: 'skills', kind: { is: 'list' } },
    { key: 'workingDays', kind: { is: 'weekdays' } },
    { key: 'dayStartsMinute', kind: { is: 'clock' }, isNeeded: true },
    { key: 'dayEndsMinute', kind: { is: 'clock' }, isNeeded: true },
    whole('breakMinutes'),
    number('startLatitude'),
    number('startLongitude'),
  ],
};
