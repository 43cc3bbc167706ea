import { FormattedMessage, useIntl } from 'react-intl';
import { Dialog } from '../../../../ui/dialogs/Dialog.js';
import { Button } from '../../../../ui/forms/Button.js';
import { SearchField } from '../../../../ui/forms/SearchField.js';
import { Section } from '../../../../ui/frame/Section.js';
import { EmptyState } from '../../../../ui/states/States.js';
import { NEW, type ThingsPlace } from '../../urls.js';
import type { Thing } from '../fields/field-spec.js';
import { type FormProps, ThingForm } from '../form/ThingForm.js';
import { ThingsTable, type Told } from './ThingsTable.js';

interface Props extends Told, Omit<FormProps, 'thing' | 'onEnd'> {
  readonly things: readonly Thing[];
  readonly place: ThingsPlace;
  readonly onPlace: (place: Partial<ThingsPlace>) => void;
  /** Whether the list can be searched: the page's one long list. */
  readonly isSearched?: boolean;
}

/** The thing whose form is open: one of these, a new one (null), or none (undefined). */
function openOf({ thing, kind }: ThingsPlace, name: string, things: readonly Thing[]): Thing | null | undefined {
  if (kind !== name || thing === null) return undefined;
  return thing === NEW ? null : things.find(({ id }) => id === thing);
}

/** The things of one kind in use, each with its form. */
export function ThingsSection({ things, nameOf, about, links, place, onPlace, isSearched = false, ...form }: Props) {
  const intl = useIntl();
  const { name } = form.kind;
  const isLong = isSearched && things.length > 0;
  const heading = intl.formatMessage({ id: `setup.thing.${name}.count` }, { count: things.length });
  const add = (
    <Button onClick={() => onPlace({ thing: NEW, kind: name })}>
      <FormattedMessage id={`setup.thing.${name}.add`} />
    </Button>
  );
  return (
    <Section heading={things.length === 0 ? intl.formatMessage({ id: `setup.thing.${name}.empty` }) : heading}>
      {things.length === 0 && (
        <p className="soft before-part">
          <FormattedMessage id={`setup.thing.${name}.how`} />
        </p>
      )}
      <div className="end-line before-part">
        {isLong && (
          <SearchField
            label={intl.formatMessage({ id: 'setup.list.find' })}
            value={place.find ?? ''}
            onChange={(find) => onPlace({ find: find || null })}
          />
        )}
        {add}
      </div>
      <Found
        things={things}
        told={links ? { nameOf, about, links } : { nameOf, about }}
        name={heading}
        find={isLong ? place.find : null}
        onChange={({ id }) => onPlace({ thing: id, kind: name })}
      />
      <FormDialog place={place} things={things} nameOf={nameOf} onClose={() => onPlace({ thing: null, kind: null })} {...form} />
    </Section>
  );
}

interface FoundProps {
  readonly things: readonly Thing[];
  readonly told: Told;
  readonly name: string;
  readonly find: string | null;
  readonly onChange: (thing: Thing) => void;
}

/** Those whose name or line holds what is looked for. */
function Found({ things, told, name, find, onChange }: FoundProps) {
  const intl = useIntl();
  const wanted = (find ?? '').trim().toLocaleLowerCase();
  if (things.length === 0) return null;
  const found = things.filter((thing) => `${told.nameOf(thing)} ${String(told.about(thing))}`.toLocaleLowerCase().includes(wanted));
  if (found.length === 0) return <EmptyState sentence={intl.formatMessage({ id: 'setup.list.noneFound' }, { text: find ?? '' })} />;
  return <ThingsTable {...told} name={name} things={found} onChange={onChange} />;
}

interface DialogProps extends Omit<FormProps, 'thing' | 'onEnd'>, Pick<Told, 'nameOf'> {
  readonly place: ThingsPlace;
  readonly things: readonly Thing[];
  readonly onClose: () => void;
}

/** The form of the thing that the address names, or of a new one. */
function FormDialog({ place, things, nameOf, onClose, ...form }: DialogProps) {
  const intl = useIntl();
  const { name } = form.kind;
  const open = openOf(place, name, things);
  if (open === undefined) return null;
  return (
    <Dialog isOpen heading={open ? nameOf(open) : intl.formatMessage({ id: `setup.thing.${name}.add` })} onClose={onClose}>
      <ThingForm key={open?.id ?? NEW} {...form} thing={open} onEnd={onClose} />
    </Dialog>
  );
}
