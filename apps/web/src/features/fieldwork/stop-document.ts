import { graphql } from '../../graphql/__generated__/gql.js';

/** A stop with everything that its steps show. */
export const stopDocument = graphql(`
  query Stop($id: ID!) {
    stop(id: $id) {
      id
      ...StopInSteps
    }
  }
`);
