import { useIntl } from 'react-intl';

/** One key. */
export function Kbd({ children }: { readonly children: string }) {
  return <kbd>{children}</kbd>;
}

export interface KeyHint {
  readonly keys: readonly string[];
  readonly words: string;
}

/** The keys that work here, in one line; moving and opening are always among them. */
export function KeyHints({ more = [] }: { readonly more?: readonly KeyHint[] }) {
  const intl = useIntl();
  const hints: KeyHint[] = [
    { keys: ['j', 'k'], words: intl.formatMessage({ id: 'parts.keys.move' }) },
    { keys: ['Enter'], words: intl.formatMessage({ id: 'parts.keys.open' }) },
    ...more,
  ];
  return (
    <p className="keys" aria-label={intl.formatMessage({ id: 'parts.keys' })}>
      {hints.map(({ keys, words }) => (
        <span key={words}>
          {keys.map((key) => (
            <Kbd key={key}>{key}</Kbd>
          ))}{' '}
          {words}
        </span>
      ))}
    </p>
  );
}
