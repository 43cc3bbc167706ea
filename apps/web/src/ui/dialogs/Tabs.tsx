import { type KeyboardEvent, type ReactNode, useId } from 'react';
import './dialogs.css';

export interface Tab<Name extends string> {
  readonly name: Name;
  readonly words: ReactNode;
}

interface Props<Name extends string> {
  readonly label: string;
  readonly tabs: readonly Tab<Name>[];
  /** The place is the page's to keep, in its address. */
  readonly chosen: Name;
  readonly onChoose: (name: Name) => void;
  readonly children: ReactNode;
}

const moves: Readonly<Record<string, (place: number, count: number) => number>> = {
  ArrowRight: (place, count) => (place + 1) % count,
  ArrowLeft: (place, count) => (place - 1 + count) % count,
  Home: () => 0,
  End: (_, count) => count - 1,
};

/** A few views of one thing; the arrows move between them. */
export function Tabs<Name extends string>({ label, tabs, chosen, onChoose, children }: Props<Name>) {
  const id = useId();
  const place = tabs.findIndex(({ name }) => name === chosen);
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>): void => {
    const next = tabs[moves[event.key]?.(place, tabs.length) ?? -1];
    if (!next) return;
    event.preventDefault();
    onChoose(next.name);
    document.getElementById(`${id}-${next.name}`)?.focus();
  };
  return (
    <>
      <div className="tabs" role="tablist" aria-label={label} onKeyDown={onKeyDown}>
        {tabs.map(({ name, words }) => (
          <button
            key={name}
            type="button"
            role="tab"
            id={`${id}-${name}`}
            aria-selected={name === chosen}
            aria-controls={`${id}-panel`}
            tabIndex={name === chosen ? 0 : -1}
            onClick={() => onChoose(name)}
          >
            {words}
          </button>
        ))}
      </div>
      <div role="tabpanel" id={`${id}-panel`} aria-labelledby={`${id}-${chosen}`}>
        {children}
      </div>
    </>
  );
}
