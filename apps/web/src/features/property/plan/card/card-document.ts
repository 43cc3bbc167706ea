import { graphql } from '../../../../graphql/__generated__/gql.js';
import type { CabinetCardQuery } from '../../../../graphql/__generated__/graphql.js';

/** A controller's year on one card, with the names that stand on it. */
export const cardDocument = graphql(`
  query CabinetCard($property: ID!, $controller: ID!) {
    property(id: $property) {
      id
      name
      address
      zones {
        id
        name
        station
        controllerId
      }
    }
    controller(id: $controller) {
      id
      name
      location
      propertyId
      yearCard {
        thirstiest
        shortStations
        reason {
          code
          details
        }
        programs {
          ...ProgramFields @unmask
        }
        months {
          month
          isOff
          neededLitres
          needMonths
          usedLitres
          programs {
            ...ProgramFields @unmask
          }
        }
        frost {
          months
          measuredDays
        }
      }
    }
  }
`);

export type Card = NonNullable<NonNullable<CabinetCardQuery['controller']>['yearCard']>;
export type CardMonth = Card['months'][number];
export type CardProgram = Card['programs'][number];
