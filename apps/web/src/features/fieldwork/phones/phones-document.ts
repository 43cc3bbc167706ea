import { graphql } from '../../../graphql/__generated__/gql.js';

/** What phones hold and what of their words is open. */
export const phonesDocument = graphql(`
  query Phones {
    devices {
      id
      waiting
      photosWaiting
      ...DeviceOfList
    }
    openOperations {
      key
      ...OpenWord @unmask
    }
  }
`);
