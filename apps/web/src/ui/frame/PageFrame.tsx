import { type ReactNode, useRef } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link, NavLink } from 'react-router';
import { DisplaySwitches } from '../theme/DisplaySwitches.js';
import { BrandMark } from './Brand.js';
import './frame.css';

export interface FrameLink {
  readonly to: string;
  readonly words: string;
}

interface Props {
  readonly links: readonly FrameLink[];
  readonly organization?: string;
  readonly person?: string;
  /** The other language's own name is the button; absent where it cannot be changed. */
  readonly onOtherLanguage?: () => void;
  readonly onSignOut?: () => void;
  readonly children: ReactNode;
}

/** A page at the desk: the pages on top, then one page. */
export function PageFrame({ links, organization, person, onOtherLanguage, onSignOut, children }: Props) {
  const intl = useIntl();
  const main = useRef<HTMLElement>(null);
  return (
    <>
      <a className="skip" href="#page" onClick={() => main.current?.focus()}>
        <FormattedMessage id="frame.skip" />
      </a>
      <header className="top">
        <div className="wrap">
          <Link className="brand" to="/">
            <BrandMark /> Rillbook
          </Link>
          {links.length > 0 && (
            <nav aria-label={intl.formatMessage({ id: 'frame.pages' })}>
              {links.map(({ to, words }) => (
                <NavLink key={to} to={to} end={to === '/'}>
                  {words}
                </NavLink>
              ))}
            </nav>
          )}
          <span className="top-end">
            {organization && <span className="xs soft org">{organization}</span>}
            <DisplaySwitches />
            {onOtherLanguage && (
              <button type="button" className="link xs" lang={intl.locale === 'es-US' ? 'en' : 'es'} onClick={onOtherLanguage}>
                <FormattedMessage id="frame.otherLanguage" />
              </button>
            )}
            {person && <span className="xs nw">{person}</span>}
            {onSignOut && (
              <button type="button" className="link xs" onClick={onSignOut}>
                <FormattedMessage id="frame.signOut" />
              </button>
            )}
          </span>
        </div>
      </header>
      <main className="wrap" id="page" ref={main} tabIndex={-1}>
        {children}
      </main>
    </>
  );
}
