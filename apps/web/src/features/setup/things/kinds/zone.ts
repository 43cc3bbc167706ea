import { graphql } from '../../../../graphql/__generated__/gql.js';
import { plantsWords, sunWords, waterNeeds } from '@rillbook/agronomy/plants/plant-words.js';
import { soilTextures } from '@rillbook/agronomy/soil/soil-texture.js';
import { irrigationMethods } from '@rillbook/irrigation/hardware/irrigation-method.js';
import { date, number, quantity, text, thing, whole, word } from '../fields/field-spec.js';
import type { ThingKind } from '../form/outcome.js';

graphql(`
  fragment ZoneFields on Zone {
    id
    version
    retiredAt
    propertyId
    name
    controllerId
    station
    meterId
    unmetered
    areaM2
    plants
    waterNeed
    plantFactor
    method
    precipMmPerH
    flowLPerMin
    flowSource
    handLPerWeek
    duLq
    soil
    slopePercent
    fillMinutes
    sun
    density
    rootDepthMm
    mulchMm
    leachingFraction
    establishedOn
  }
`);

const create = graphql(`
  mutation CreateZone($id: ID, $input: ZoneInput!) {
    result: createZone(deviceRecordId: $id, input: $input) {
      __typename
      ... on Zone {
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
  mutation ChangeZone($id: ID!, $version: Int!, $input: ZoneInput!) {
    result: changeZone(id: $id, version: $version, input: $input) {
      __typename
      ... on Zone {
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
  mutation RetireZone($id: ID!, $version: Int!) {
    result: retireZone(id: $id, version: $version) {
      __typename
      ... on Zone {
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

export const zone: ThingKind = {
  name: 'zone',
  create,
  change,
  retire,
  fields: [
    text('name', true),
    quantity('areaM2', 'area', true),
    word('method', 'method', irrigationMethods, true),
    word('plants', 'plants', plantsWords),
    word('waterNeed', 'need', waterNeeds),
    thing('controllerId'),
    whole('station'),
    thing('meterId'),
    { key: 'unmetered', kind: { is: 'tick' } },
    quantity('precipMmPerH', 'rate'),
    quantity('flowLPerMin', 'flow'),
    word('flowSource', 'flowSource', ['measured', 'nameplate', 'assumed']),
    quantity('handLPerWeek', 'volume'),
    number('duLq'),
    word('soil', 'soil', soilTextures),
    number('slopePercent'),
    number('fillMinutes'),
    word('sun', 'field.sun', sunWords),
    number('plantFactor'),
    number('density'),
    quantity('rootDepthMm', 'depth'),
    quantity('mulchMm', 'depth'),
    number('leachingFraction'),
    date('establishedOn'),
  ],
};
