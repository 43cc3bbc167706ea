import type { FragmentType } from '@apollo/client';
import { useMemo } from 'react';
import { graphql } from '../../graphql/__generated__/gql.js';
import type { GaugedAccountFragment } from '../../graphql/__generated__/graphql.js';
import { type Names, noNames } from '../../says/names.js';
import { useSays } from '../../says/use-says.js';
import { GAPS, type GapKind, type GaugeSize, MARKS, type Mark } from '@rillbook/showing/gauge/drawing/model.js';
import { StaffGauge } from '../../ui/gauge/StaffGauge.js';
import { useMasked } from '../use-masked.js';

export const gaugedAccount = graphql(`
  fragment GaugedAccount on MonthAccount {
    id
    allowed {
      litres
      sdLitres
      estimatedShare
      reason {
        code
        details
      }
    }
    needed {
      litres
      sdLitres
      estimatedShare
      reason {
        code
        details
      }
    }
    programmed {
      litres
      sdLitres
      estimatedShare
      reason {
        code
        details
      }
    }
    metered {
      litres
      sdLitres
      estimatedShare
      reason {
        code
        details
      }
    }
    landscapeGap {
      litres
      sdLitres
      within
      money
      estimate {
        code
        details
      }
      reason {
        code
        details
      }
    }
    settingsGap {
      litres
      sdLitres
      within
      money
      estimate {
        code
        details
      }
      reason {
        code
        details
      }
    }
    unexplainedGap {
      litres
      sdLitres
      within
      money
      estimate {
        code
        details
      }
      reason {
        code
        details
      }
    }
    aboveAllowed {
      litres
      sdLitres
      within
      money
      reason {
        code
        details
      }
    }
    aboveNeed {
      litres
      sdLitres
      within
      money
      reason {
        code
        details
      }
    }
  }
`);

interface Props {
  readonly account: FragmentType<GaugedAccountFragment>;
  readonly size: GaugeSize | 'fit';
  readonly names?: Names;
  readonly scaleTopLitres?: number;
  readonly rain?: { readonly depthMm: number; readonly fullMm: number };
}

/** A month account as a staff gauge; what is missing says why. */
export function AccountGauge({ account: masked, size, names = noNames, ...rest }: Props) {
  const account = useMasked(gaugedAccount, masked);
  const { because } = useSays(names);
  const missing = useMemo(() => {
    const found: Partial<Record<Mark | GapKind, string>> = {};
    for (const mark of MARKS) {
      const { reason } = account[mark];
      if (reason) found[mark] = because(reason);
    }
    for (const { kind } of GAPS) {
      const { reason } = account[`${kind}Gap`];
      if (reason) found[kind] = because(reason);
    }
    return found;
  }, [account, because]);
  return <StaffGauge account={account} size={size} missing={missing} {...rest} />;
}
