import { graphql } from '../../../graphql/__generated__/gql.js';
import type { PlanOfControllerQuery } from '../../../graphql/__generated__/graphql.js';

/** One controller's month planned. */
export const planDocument = graphql(`
  query PlanOfController($id: ID!, $month: Month!) {
    controller(id: $id) {
      id
      plan(month: $month) {
        month
        needMonths
        gapShare
        layoutShare
        reason {
          code
          details
        }
        present {
          ...PlanResultFields @unmask
        }
        leastChange {
          ...PlanOfferFields @unmask
        }
        full {
          ...PlanOfferFields @unmask
        }
        impossible {
          zoneId
          station
          unmetLitres
          because
          freedBy
        }
        sharedMeter {
          by
          controllerIds
          flowLPerMin
          from
          until
        }
        choices {
          zoneId
          station
          choices {
            choice
            neededLitres
            minutes
          }
        }
      }
    }
  }

  fragment PlanOfferFields on PlanOffer {
    kind
    programs {
      ...ProgramFields @unmask
    }
    result {
      ...PlanResultFields @unmask
    }
  }

  fragment PlanResultFields on PlanResult {
    usedLitres
    neededLitres
    unmetLitres
    wastedLitres
    ranOffLitres
    keyPresses
    beginsAt
    endsAt
    limits
    breaches {
      rule
      kind
      program
      stations
      times
    }
    zones {
      zoneId
      station
      neededLitres
      usedLitres
      unmetLitres
      wastedLitres
    }
  }
`);

export type Plan = NonNullable<NonNullable<PlanOfControllerQuery['controller']>['plan']>;
export type Offer = NonNullable<Plan['full']>;
export type Result = Offer['result'];
