import { graphql } from '../../../../graphql/__generated__/gql.js';
import { text } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment CrewFields on Crew {
    id
    version
    retiredAt
    name
  }
`);

const create = graphql(`
  mutation CreateCrew($input: CrewInput!) {
    result: createCrew(input: $input) {
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
  fields: [text('name', true), { key: 'memberIds', kind: { is: 'things' } }],
};
