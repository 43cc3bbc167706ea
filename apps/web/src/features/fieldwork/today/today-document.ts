import { graphql } from '../../../graphql/__generated__/gql.js';

/** A day's stops, of one crew or of all whose work the person sees. */
export const todayDocument = graphql(`
  query Today($day: Date!, $crewId: ID) {
    today(day: $day, crewId: $crewId) {
      id
      day
      stops {
        id
        visit {
          id
          closedAt
        }
      }
      ...CrewDayRoute
      ...DayEndRoute
    }
    crews {
      id
      name
    }
  }
`);
