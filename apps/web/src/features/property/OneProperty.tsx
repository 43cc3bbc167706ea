import { useMemo } from 'react';
import type { PropertyPageQuery } from '../../graphql/__generated__/graphql.js';
import { namesOf } from '../../says/names.js';
import { AccountFoot } from './account/AccountFoot.js';
import { AccountSection } from './account/AccountSection.js';
import { DoubtSection } from './account/DoubtSection.js';
import { PropertyHead } from './account/PropertyHead.js';
import { YearSection } from './account/YearSection.js';
import { ControllerSection } from './controllers/ControllerSection.js';
import { MetersSection } from './meters/MetersSection.js';
import { ChangesSection } from './records/ChangesSection.js';
import { FindingsSection } from './records/FindingsSection.js';
import { VisitsSection } from './records/VisitsSection.js';
import { WorkSection } from './records/WorkSection.js';
import { WhatIfSection } from './what-if/WhatIfSection.js';
import { ZonesSection } from './zones/ZonesSection.js';

interface Props {
  readonly property: NonNullable<PropertyPageQuery['property']>;
  /** The month of the address; none is the newest. */
  readonly month: string | null;
  readonly onMonth: (month: string) => void;
}

/** The sections of the page in the order in which questions come. */
export function OneProperty({ property, month, onMonth }: Props) {
  const names = useMemo(() => namesOf(property), [property]);
  const account = property.account ?? null;
  const shown = month ?? account?.month ?? null;
  return (
    <>
      <PropertyHead
        property={property}
        account={account}
        months={property.accounts.map((each) => each.month)}
        month={shown}
        through={account?.through ?? null}
        names={names}
        onMonth={onMonth}
      />
      <AccountSection account={account} property={property} month={shown} names={names} />
      <YearSection accounts={property.accounts} month={shown} propertyId={property.id} names={names} />
      <DoubtSection account={account} names={names} />
      <ZonesSection account={account} property={property} names={names} />
      <WhatIfSection propertyId={property.id} month={month} />
      <FindingsSection property={property} names={names} />
      {property.controllers.map((controller) => (
        <ControllerSection key={controller.id} controller={controller} names={names} />
      ))}
      <MetersSection meters={property.meters} />
      <WorkSection property={property} />
      <VisitsSection property={property} />
      <ChangesSection property={property} />
      {account && <AccountFoot account={account} />}
    </>
  );
}
