import { FormattedMessage, useIntl } from 'react-intl';
import { useFormats } from '../../../../i18n/LanguageProvider.js';
import { NOT_KNOWN } from '../../../../i18n/numbers.js';
import { sentenceCase } from '../../../../page/values/sentence-case.js';
import { useVolumeColumn } from '../../../../page/use-volume-column.js';
import { Section } from '../../../../ui/frame/Section.js';
import { Head, Num, Table } from '../../../../ui/tables/Table.js';
import { clockInWords, daysInWords } from '../../../../programs/days-in-words.js';
import { MonthsMissed } from './CardNotes.js';
import type { Card, CardMonth, CardProgram } from './card-document.js';

/** Month by month what is turned: the percent of each program, and its days and starts where that month's rules ask for others. */
export function PercentsOfYear({ card: { programs, months } }: { readonly card: Card }) {
  const intl = useIntl();
  const formats = useFormats();
  const column = useVolumeColumn(Math.max(...months.map(({ neededLitres }) => neededLitres)));
  const heading = intl.formatMessage({ id: 'card.percents' });
  const heads = {
    program: (name: string) => intl.formatMessage({ id: 'card.program' }, { name }),
    needed: intl.formatMessage({ id: 'card.needed' }, { unit: column.unit }),
    used: intl.formatMessage({ id: 'card.used' }, { unit: column.unit }),
  };
  return (
    <Section heading={heading} note={<FormattedMessage id="card.percents.note" />}>
      <Table
        name={heading}
        isTight
        head={
          <tr>
            <Head>
              <FormattedMessage id="card.month" />
            </Head>
            {programs.map(({ name }) => (
              <Head key={name} isNumber>
                {heads.program(name)}
              </Head>
            ))}
            <Head isNumber>{heads.needed}</Head>
            <Head isNumber>{heads.used}</Head>
          </tr>
        }
      >
        {months.map((month) => (
          <tr key={month.month}>
            <td>{sentenceCase(formats.month(month.month))}</td>
            {programs.map((program) => (
              <Num key={program.name} head={heads.program(program.name)}>
                <Turned month={month} base={program} />
              </Num>
            ))}
            <Num head={heads.needed}>{column.figure(month.neededLitres)}</Num>
            <Num head={heads.used}>{column.figure(month.usedLitres)}</Num>
          </tr>
        ))}
      </Table>
      <MonthsMissed months={months} />
    </Section>
  );
}

function Turned({ month: { isOff, programs }, base }: { readonly month: CardMonth; readonly base: CardProgram }) {
  const intl = useIntl();
  const formats = useFormats();
  if (isOff) return <FormattedMessage id="card.off" />;
  if (!programs) return <FormattedMessage id="card.own" />;
  const program = programs.find(({ name }) => name === base.name);
  if (!program) return NOT_KNOWN;
  const starts = (of: CardProgram): string => [...of.starts].sort().join();
  return (
    <>
      <b>{formats.percent((program.adjustPercent ?? 100) / 100)}</b>
      {program.days !== base.days && <span className="line">{daysInWords(intl, formats, program.days)}</span>}
      {starts(program) !== starts(base) && (
        <span className="line">
          {[...program.starts]
            .sort()
            .map((clock) => clockInWords(formats, clock))
            .join(', ')}
        </span>
      )}
    </>
  );
}
