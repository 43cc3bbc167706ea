import { graphql } from '../../../graphql/__generated__/gql.js';

/** What a decision needs to know of its finding; the bar and the dialogs are one component in several files. */
export const findingToDecide = graphql(`
  fragment FindingToDecide on Finding {
    id
    version
    kind
    state
    says {
      code
      details
    }
    controllerId
    meterId
    zoneId
    property {
      id
      name
      zones {
        id
        name
        station
      }
      controllers {
        id
        name
      }
      meters {
        id
        name
      }
    }
  }
`);

/** Whether it still waits for a decision or its work. */
export const isOpen = (state: string): boolean => state === 'open' || state === 'in work';
