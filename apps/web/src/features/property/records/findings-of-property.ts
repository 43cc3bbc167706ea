import { graphql } from '../../../graphql/__generated__/gql.js';

/** What was found at a property: its own list, and the reasons beside the gauge. */
export const findingsOfProperty = graphql(`
  fragment FindingsOfProperty on Property {
    id
    findings {
      id
      kind
      state
      litres
      money
      cameBack
      dismissedWhy
      resolvedWith
      says {
        code
        details
      }
      workOrders {
        id
        state
        day
        crew {
          id
          name
        }
      }
    }
  }
`);
