import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Dialog } from '../../../apps/web/src/ui/dialogs/Dialog.js';
import { Tabs } from '../../../apps/web/src/ui/dialogs/Tabs.js';
import { useToast } from '../../../apps/web/src/ui/dialogs/Toasts.js';
import { Button } from '../../../apps/web/src/ui/forms/Button.js';
import { TextField } from '../../../apps/web/src/ui/forms/Field.js';
import { ProblemList } from '../../../apps/web/src/ui/forms/ProblemList.js';
import { SearchField } from '../../../apps/web/src/ui/forms/SearchField.js';
import { NumberPad } from '../../../apps/web/src/ui/phone/NumberPad.js';
import { PhoneFrame } from '../../../apps/web/src/ui/phone/PhoneFrame.js';
import { ErrorState, LoadingState } from '../../../apps/web/src/ui/states/States.js';
import { Progress } from '../../../apps/web/src/ui/states/Progress.js';
import { type Sort, SortHead, Table } from '../../../apps/web/src/ui/tables/Table.js';
import { useListKeys } from '../../../apps/web/src/ui/tables/use-list-keys.js';
import { DisplaySwitches } from '../../../apps/web/src/ui/theme/DisplaySwitches.js';
import { atDesk } from '../support/at-desk.js';

afterEach(() => {
  cleanup();
  vi.useRealTimers();
  localStorage.clear();
});

describe('a field', () => {
  it('belongs to its label, hint, unit and problem', () => {
    atDesk(
      <TextField
        label="Area"
        unit="sq ft"
        hint="As the audit has it."
        problem="type a number greater than 0."
        value="x"
        onChange={() => {}}
      />,
    );
    const box = screen.getByRole('textbox', { name: 'Area' });
    expect(box.getAttribute('aria-invalid')).toBe('true');
    const described = box
      .getAttribute('aria-describedby')
      ?.split(' ')
      .map((id) => document.getElementById(id)?.textContent);
    expect(described).toEqual(['As the audit has it.', 'Error: type a number greater than 0.']);
  });

  it('is reached from the list of problems, which takes the focus when it comes', async () => {
    atDesk(
      <>
        <ProblemList problems={[{ field: 'area', words: 'Area: type a number.' }]} />
        <TextField id="area" label="Area" value="" onChange={() => {}} />
      </>,
    );
    expect(document.activeElement).toBe(screen.getByRole('alert'));
    await userEvent.click(screen.getByRole('link', { name: 'Area: type a number.' }));
    expect(document.activeElement).toBe(screen.getByRole('textbox'));
  });

  it('for searching is a slash away, but not while one types', async () => {
    atDesk(
      <>
        <SearchField label="Find" value="" onChange={() => {}} />
        <TextField label="Note" value="" onChange={() => {}} />
      </>,
    );
    await userEvent.keyboard('/');
    expect(document.activeElement).toBe(screen.getByRole('searchbox'));
    screen.getByRole('textbox', { name: 'Note' }).focus();
    await userEvent.keyboard('/');
    expect(document.activeElement).toBe(screen.getByRole('textbox', { name: 'Note' }));
  });
});

describe('a button', () => {
  it('does nothing twice while its deed is under way', async () => {
    const deed = vi.fn();
    atDesk(
      <Button isBusy onClick={deed}>
        Save
      </Button>,
    );
    await userEvent.click(screen.getByRole('button'));
    expect(deed).not.toHaveBeenCalled();
  });
});

describe('a table', () => {
  it('sorts by its heads, largest first for numbers, and turns round', async () => {
    const sorts: Sort<'money' | 'name'>[] = [];
    function Sorted() {
      const [sort, setSort] = useState<Sort<'money' | 'name'>>({ by: 'name', isDown: false });
      const keep = (next: Sort<'money' | 'name'>): void => {
        sorts.push(next);
        setSort(next);
      };
      const head = (
        <tr>
          <SortHead column="name" sort={sort} onSort={keep}>
            Property
          </SortHead>
          <SortHead column="money" sort={sort} onSort={keep} isNumber>
            About, $
          </SortHead>
        </tr>
      );
      return (
        <Table name="Properties" head={head}>
          {null}
        </Table>
      );
    }
    atDesk(<Sorted />);
    await userEvent.click(screen.getByRole('button', { name: /About/ }));
    await userEvent.click(screen.getByRole('button', { name: /About/ }));
    expect(sorts).toEqual([
      { by: 'money', isDown: true },
      { by: 'money', isDown: false },
    ]);
    expect(screen.getByRole('columnheader', { name: /About/ }).getAttribute('aria-sort')).toBe('ascending');
    expect(screen.getByRole('columnheader', { name: 'Property' }).getAttribute('aria-sort')).toBe('none');
  });
});

describe('a list', () => {
  it('is worked through with j, k, Enter and keys of its own, and never while someone types', async () => {
    const opened: number[] = [];
    const accepted: number[] = [];
    const keys = { a: (row: number) => accepted.push(row) };
    function List() {
      const { rowProps, row } = useListKeys({ count: 3, onOpen: (place) => opened.push(place), keys });
      return (
        <>
          <input aria-label="box" />
          <p>row {row}</p>
          <ul>
            {[0, 1, 2].map((place) => (
              <li key={place} {...rowProps(place)}>
                item {place}
              </li>
            ))}
          </ul>
        </>
      );
    }
    atDesk(<List />);
    await userEvent.keyboard('{Enter}a');
    expect([opened, accepted]).toEqual([[], []]);
    await userEvent.keyboard('jjjjk{Enter}a');
    expect([opened, accepted]).toEqual([[1], [1]]);
    expect(document.activeElement?.textContent).toBe('item 1');
    screen.getByRole('textbox').focus();
    await userEvent.keyboard('j');
    expect(screen.getByText('row 1')).toBeTruthy();
  });
});

describe('a note of what was done', () => {
  function Deed({ onUndo }: { readonly onUndo: () => void }) {
    const toast = useToast();
    return <Button onClick={() => toast({ words: 'Finding dismissed.', onUndo })}>Dismiss</Button>;
  }

  it('stays ten seconds, longer under the pointer, and takes the deed back once', () => {
    vi.useFakeTimers();
    const undo = vi.fn();
    atDesk(<Deed onUndo={undo} />);
    const notes = within(screen.getByRole('status', { name: 'Notes' }));
    fireEvent.click(screen.getByRole('button', { name: 'Dismiss' }));
    act(() => vi.advanceTimersByTime(9_900));
    const note = notes.getByText('Finding dismissed.').parentElement as HTMLElement;
    fireEvent.mouseEnter(note);
    act(() => vi.advanceTimersByTime(60_000));
    fireEvent.click(notes.getByRole('button', { name: 'Undo' }));
    expect(undo).toHaveBeenCalledTimes(1);
    expect(notes.queryByText('Finding dismissed.')).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: 'Dismiss' }));
    act(() => vi.advanceTimersByTime(10_100));
    expect(notes.queryByText('Finding dismissed.')).toBeNull();
    expect(undo).toHaveBeenCalledTimes(1);
  });
});

describe('a dialog and tabs', () => {
  it('begins at its first box, closes by its word, and gives the focus back', async () => {
    function Asking() {
      const [isOpen, setOpen] = useState(false);
      return (
        <>
          <Button onClick={() => setOpen(true)}>Ask</Button>
          <Dialog isOpen={isOpen} heading="Dismiss this finding" onClose={() => setOpen(false)}>
            <TextField label="Why" value="" onChange={() => {}} />
          </Dialog>
        </>
      );
    }
    atDesk(<Asking />);
    await userEvent.click(screen.getByRole('button', { name: 'Ask' }));
    expect(screen.getByRole('dialog', { name: 'Dismiss this finding' })).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole('textbox', { name: 'Why' }));
    await userEvent.click(screen.getByRole('button', { name: 'Close' }));
    expect(screen.queryByRole('dialog')).toBeNull();
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Ask' }));
  });

  it('moves between tabs with the arrows, round the end', async () => {
    const chosen: string[] = [];
    atDesk(
      <Tabs
        label="Programs"
        tabs={[
          { name: 'a', words: 'A' },
          { name: 'b', words: 'B' },
        ]}
        chosen="b"
        onChoose={(name) => chosen.push(name)}
      >
        panel
      </Tabs>,
    );
    screen.getByRole('tab', { name: 'B' }).focus();
    await userEvent.keyboard('{ArrowRight}{Home}{End}');
    expect(chosen).toEqual(['a', 'a', 'b']);
    expect(screen.getByRole('tabpanel', { name: 'B' }).textContent).toBe('panel');
  });
});

describe('states', () => {
  it('say nothing for a moment, then that it is fetching, then that it is slow', () => {
    vi.useFakeTimers();
    atDesk(<LoadingState />);
    const state = screen.getAllByRole('status').find((element) => element.getAttribute('aria-busy')) as HTMLElement;
    expect(state.textContent).toBe('');
    act(() => vi.advanceTimersByTime(400));
    expect(state.textContent).toBe('Fetching…');
    act(() => vi.advanceTimersByTime(6_000));
    expect(state.textContent).toBe('Still fetching. The line may be slow.');
  });

  it('tell a lost line from a refusal, and try again', async () => {
    const retry = vi.fn();
    atDesk(<ErrorState problem={new TypeError('Failed to fetch')} onRetry={retry} />);
    expect(screen.getByRole('alert').textContent).toContain('The server did not answer');
    await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
    expect(retry).toHaveBeenCalledTimes(1);
    cleanup();
    atDesk(<ErrorState problem={new Error('No meter 7.')} />);
    expect(screen.getByRole('alert').textContent).toContain('The server could not do this: No meter 7.');
  });

  it('say how far a long thing is, in words too', () => {
    atDesk(<Progress label="Bringing in readings" done={1200} total={5000} />);
    const bar = screen.getByRole('progressbar', { name: 'Bringing in readings' }) as HTMLProgressElement;
    expect([bar.value, bar.max]).toEqual([1200, 5000]);
    expect(screen.getByText('1200 of 5000')).toBeTruthy();
  });
});

describe('the phone', () => {
  it('types a register with large keys and with real ones', async () => {
    function Register() {
      const [value, setValue] = useState('');
      return <NumberPad name="Register" value={value} onChange={setValue} unit="CCF" />;
    }
    atDesk(<Register />);
    for (const key of ['1', '8', '9', '2', '2', '.', '9', '.']) await userEvent.click(screen.getByRole('button', { name: key }));
    expect(screen.getByRole('status', { name: 'Register' }).textContent).toBe('18,922.9CCF');
    await userEvent.keyboard('{Backspace}{Backspace}5');
    expect(screen.getByRole('status', { name: 'Register' }).textContent).toBe('189,225CCF');
  });

  it('opens light whatever the device says, and dark only when chosen', async () => {
    vi.stubGlobal('matchMedia', (query: string) => ({
      matches: query.includes('dark'),
      addEventListener: () => {},
      removeEventListener: () => {},
    }));
    atDesk(<DisplaySwitches />);
    expect(document.documentElement.dataset['theme']).toBe('dark');
    cleanup();
    atDesk(
      <PhoneFrame status="2 visits waiting.">
        <DisplaySwitches />
      </PhoneFrame>,
    );
    expect(document.documentElement.dataset['theme']).toBe('light');
    expect(screen.getByText('2 visits waiting.').getAttribute('role')).toBe('status');
    await userEvent.click(screen.getByRole('button', { name: 'Dark' }));
    await userEvent.click(screen.getByRole('button', { name: 'High contrast' }));
    expect({ ...document.documentElement.dataset }).toMatchObject({ theme: 'dark', contrast: 'high' });
    cleanup();
    atDesk(<DisplaySwitches />);
    expect(screen.getByRole('button', { name: 'High contrast' }).getAttribute('aria-pressed')).toBe('true');
    vi.unstubAllGlobals();
  });
});
