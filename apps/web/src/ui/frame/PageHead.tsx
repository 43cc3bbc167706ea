import { type ReactNode, useEffect } from 'react';

interface Props {
  /** The page's one sentence: what it answers. */
  readonly sentence: string;
  /** The line above: where and when. */
  readonly crumb?: ReactNode;
  readonly lede?: ReactNode;
  /** Controls at the right of the sentence; one filled button a page. */
  readonly actions?: ReactNode;
  /** What stands in the browser's tab where the sentence would be too long. */
  readonly tab?: string;
}

/** A page starts with a sentence that answers, not with a title. */
export function PageHead({ sentence, crumb, lede, actions, tab }: Props) {
  usePageTitle(tab ?? sentence);
  return (
    <div className="head">
      {crumb && <p className="crumb">{crumb}</p>}
      <div className="head-line">
        <h1>{sentence}</h1>
        {actions && <div className="tools">{actions}</div>}
      </div>
      {lede && <p className="lede">{lede}</p>}
    </div>
  );
}

/** The browser's tab says which page this is. */
export function usePageTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · Rillbook`;
  }, [title]);
}
