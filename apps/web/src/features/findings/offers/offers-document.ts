import { graphql } from '../../../graphql/__generated__/gql.js';
import type { OffersToEnterQuery } from '../../../graphql/__generated__/graphql.js';

/** What a controller is set to, and the two offers of a month's plan. */
export const offersDocument = graphql(`
  query OffersToEnter($id: ID!, $month: Month!) {
    controller(id: $id) {
      id
      name
      presentSettings {
        id
        state
        ...SetPrograms @unmask
      }
      plan(month: $month) {
        month
        reason {
          code
          details
        }
        leastChange {
          ...OfferToEnter @unmask
        }
        full {
          ...OfferToEnter @unmask
        }
      }
    }
  }

  fragment SetPrograms on Settings {
    programs {
      ...ProgramFields @unmask
    }
  }

  fragment OfferToEnter on PlanOffer {
    kind
    programs {
      ...ProgramFields @unmask
    }
    result {
      unmetLitres
      wastedLitres
      keyPresses
    }
  }
`);

export type ControllerToEnter = NonNullable<OffersToEnterQuery['controller']>;
export type OfferToEnter = NonNullable<NonNullable<ControllerToEnter['plan']>['full']>;
