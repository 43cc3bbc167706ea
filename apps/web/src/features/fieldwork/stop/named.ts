import type { IntlShape } from 'react-intl';

/** A number or a letter alone says nothing: Controller 1. A real name stands as it is. */
export const namedAs = (intl: IntlShape, id: 'field.named.meter' | 'field.named.controller', name: string): string =>
  name.length > 3 ? name : intl.formatMessage({ id }, { name });
