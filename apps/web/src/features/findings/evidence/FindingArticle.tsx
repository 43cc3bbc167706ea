import type { FragmentType } from '@apollo/client';
import { type ReactNode, useMemo } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { Link } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import type { FindingOfArticleFragment } from '../../../graphql/__generated__/graphql.js';
import { useFormats } from '../../../i18n/LanguageProvider.js';
import { paths } from '../../../page/paths.js';
import { useMasked } from '../../../page/use-masked.js';
import { type Names, namesOf } from '../../../says/names.js';
import { useSays } from '../../../says/use-says.js';
import { mayDo, useViewer } from '../../../session/viewer.js';
import { usePageTitle } from '../../../ui/frame/PageHead.js';
import { useInSight } from '../../../ui/frame/use-in-sight.js';
import { ARTICLE_ID } from '../list/FindingList.js';
import { toldSentence } from '../headline/told-sentence.js';
import { SeldomUseful } from '../list/SeldomUseful.js';
import { isTooLittle } from '../list/water-of-kind.js';
import { AccountEvidence } from './AccountEvidence.js';
import { CheckFirst } from './CheckFirst.js';
import { Decided } from './Decided.js';
import { FindingPhotos } from './FindingPhotos.js';
import { FindingPast } from './FindingPast.js';
import { LikelyRegister } from './LikelyRegister.js';
import { readEvidence } from './read-evidence.js';
import { UsageHours } from './hours/UsageHours.js';
import { WhyWeThinkSo } from './WhyWeThinkSo.js';
import { WorkForIt } from './WorkForIt.js';
import { ZoneEvidence } from './ZoneEvidence.js';

const findingOfArticle = graphql(`
  fragment FindingOfArticle on Finding {
    id
    kind
    state
    fromOn
    untilOn
    litres
    money
    confidence
    says {
      code
      details
    }
    evidence
    openedAt
    cameBack
    clearedAt
    history {
      kind
      at
    }
    isSilenced
    acknowledgedAt
    acknowledgedBy
    acknowledgedNote
    acknowledgedUntil
    ...UsageHoursOfFinding
    ...PhotosOfFinding
    dismissedWhy
    resolvedWith
    decidedBy
    decidedAt
    property {
      id
      name
      zones {
        id
        name
        station
      }
      controllers {
        id
        name
      }
      meters {
        id
        name
      }
      accounts {
        id
        month
        ...GaugedAccount
        ...MonthOfYear
      }
    }
    workOrders {
      id
      kind
      state
      what
      day
      crew {
        id
        name
      }
    }
  }
`);

interface Props {
  readonly finding: FragmentType<FindingOfArticleFragment>;
  readonly isSeldomUseful: boolean;
  /** What can be decided, under the sentence. */
  readonly children: ReactNode;
}

/** What was found as a sentence, the water and money in it, and its evidence. */
export function FindingArticle({ finding: masked, isSeldomUseful, children }: Props) {
  const finding = useMasked(findingOfArticle, masked);
  const names = useMemo(() => namesOf(finding.property), [finding.property]);
  const says = useSays(names);
  const intl = useIntl();
  const formats = useFormats();
  const evidence = useMemo(() => readEvidence(finding.evidence), [finding.evidence]);
  const viewer = useViewer();
  const isUndecided = ['open', 'in work'].includes(finding.state);
  const article = useInSight(finding.id);
  usePageTitle(`${says.word('kind', finding.kind)}, ${finding.property.name}`);
  return (
    <article ref={article} id={ARTICLE_ID} tabIndex={-1}>
      <Crumb finding={finding} />
      {isSeldomUseful && <SeldomUseful />}
      <h1>{toldSentence({ intl, formats, names }, finding)}</h1>
      <p className="lede">
        <Days finding={finding} />
      </p>
      <FindingPast finding={finding} />
      <Decided finding={finding} />
      {children}
      {isUndecided && evidence.likely && mayDo(viewer, 'record fieldwork') && (
        <LikelyRegister propertyId={finding.property.id} likely={evidence.likely} />
      )}
      <FindingPhotos finding={finding} />
      <WorkForIt orders={finding.workOrders} />
      <UsageHours finding={finding} />
      <Pictures finding={finding} names={names} />
      {evidence.zones.length > 0 && <ZoneEvidence zones={evidence.zones} names={names} />}
      <div className="evid">
        <WhyWeThinkSo finding={finding} evidence={evidence} />
        <CheckFirst kind={finding.kind} />
      </div>
    </article>
  );
}

function Crumb({ finding: { property, kind, state, openedAt, cameBack, untilOn } }: { readonly finding: FindingOfArticleFragment }) {
  const { moment } = useFormats();
  const { word } = useSays();
  return (
    <p className="crumb">
      <Link to={paths.property(property.id, untilOn?.slice(0, 7) ?? null)}>{property.name}</Link> · {word('kind', kind)} ·{' '}
      <FormattedMessage id="findings.openSince" values={{ state, day: moment(openedAt).split(',')[0] }} />
      {cameBack > 0 && (
        <strong className="came-back">
          {' '}
          <FormattedMessage id="findings.cameBack" values={{ count: cameBack }} />
        </strong>
      )}
    </p>
  );
}

/** The days on which it was seen, and why no money is told where there is none. */
function Days({ finding: { kind, litres, money, fromOn, untilOn } }: { readonly finding: FindingOfArticleFragment }) {
  const intl = useIntl();
  const { dayInWords } = useFormats();
  const isOneDay = fromOn === untilOn;
  const days = intl.formatMessage(
    { id: 'findings.seen' },
    { from: dayInWords(fromOn), until: dayInWords(untilOn), days: isOneDay ? 'one' : 'more' },
  );
  const isPriced = typeof money === 'number' || typeof litres !== 'number' || isTooLittle(kind);
  return isPriced || kind === 'doubtful reading' || kind === 'flow to be tested'
    ? days
    : `${days} ${intl.formatMessage({ id: 'findings.noMoney' })}`;
}

/** The account of the month it was seen in, and the months before. */
function Pictures({ finding: { property, untilOn }, names }: { readonly finding: FindingOfArticleFragment; readonly names: Names }) {
  const month = untilOn?.slice(0, 7) ?? null;
  const known = property.accounts.filter((account) => month === null || account.month <= month);
  return <AccountEvidence accounts={known} month={month} names={names} hrefOf={(one) => paths.property(property.id, one)} />;
}
