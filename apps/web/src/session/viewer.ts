import { createContext, useContext } from 'react';
import { graphql } from '../graphql/__generated__/gql.js';
import type { ViewerQuery } from '../graphql/__generated__/graphql.js';

/** Who is signed in, where, and what they may do. */
export const viewerDocument = graphql(`
  query Viewer {
    me {
      memberId
      role
      permissions
      clientId
      crewIds
      person {
        id
        name
        email
        language
      }
      organization {
        id
        name
        units
        language
        timeZone
        currency
        today
        isDemo
        version
      }
      memberships {
        organizationId
        organizationName
        role
      }
    }
  }
`);

export type Viewer = NonNullable<ViewerQuery['me']>;

export const ViewerContext = createContext<Viewer | null>(null);

/** The person signed in; every page but the doors stands inside. */
export function useViewer(): Viewer {
  const viewer = useContext(ViewerContext);
  if (!viewer) throw new Error('useViewer stands outside of SignedIn.');
  return viewer;
}

/** Whether the person's role includes a permission, in the server's own words. */
export const mayDo = (viewer: Viewer, permission: string): boolean => viewer.permissions.includes(permission);
