import { useLocation } from 'react-router';
import { forgetOwedSignOut } from '../../session/owed-sign-out.js';
import { nextAddress } from '../../graphql/client.js';

/** Where the person wanted to go before the door stood in the way. */
export const useNextAddress = (): string => nextAddress(useLocation().search);

/** Goes there by a full load, so that nothing of whoever was here before stays in memory. */
export const enter = (address: string): void => {
  forgetOwedSignOut();
  window.location.assign(address);
};
