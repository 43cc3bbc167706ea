import { FormattedMessage } from 'react-intl';
import { useDisplay } from './DisplayProvider.js';
import './switches.css';

/** High contrast, large text and dark: in the header, where the sun finds them, not deep in settings. */
export function DisplaySwitches() {
  const { display, theme, change } = useDisplay();
  return (
    <span className="switches">
      <button
        type="button"
        aria-pressed={display.contrast === 'high'}
        onClick={() => change({ contrast: display.contrast === 'high' ? 'usual' : 'high' })}
      >
        <FormattedMessage id="frame.contrast" />
      </button>
      <button
        type="button"
        aria-pressed={display.text === 'large'}
        onClick={() => change({ text: display.text === 'large' ? 'usual' : 'large' })}
      >
        <FormattedMessage id="frame.large" />
      </button>
      <button type="button" aria-pressed={theme === 'dark'} onClick={() => change({ theme: theme === 'dark' ? 'light' : 'dark' })}>
        <FormattedMessage id="frame.dark" />
      </button>
    </span>
  );
}
