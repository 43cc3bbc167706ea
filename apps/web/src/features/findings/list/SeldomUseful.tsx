import { FormattedMessage } from 'react-intl';

/** Marks a finding whose kind this organization has seldom found worth a look. */
export function SeldomUseful() {
  return (
    <strong className="seldom">
      <FormattedMessage id="findings.group.seldom" />
    </strong>
  );
}
