import { useQuery } from '@apollo/client/react';
import { useState } from 'react';
import { FormattedMessage, useIntl } from 'react-intl';
import { useParams } from 'react-router';
import { graphql } from '../../../graphql/__generated__/gql.js';
import { Fetched } from '../../../page/Fetched.js';
import { NotFoundPage } from '../../../page/NotFoundPage.js';
import { useViewer } from '../../../session/viewer.js';
import { PageHead } from '../../../ui/frame/PageHead.js';
import { Section } from '../../../ui/frame/Section.js';
import { WhatChanges } from './WhatChanges.js';
import { RuleForm } from './RuleForm.js';
import '../property.css';
import { emptyRule, type RuleDraft, ruleInput } from './rule-draft.js';

const suppliersDocument = graphql(`
  query RuleChangePage {
    waterSuppliers {
      id
      name
      rules {
        id
        name
        retiredAt
      }
    }
    crews {
      id
      name
    }
  }
`);

/** A supplier's new rule: typed, seen for what it changes, brought in, and given to the crews. */
export function RuleChangePage() {
  const intl = useIntl();
  const { supplierId = '' } = useParams();
  const { organization } = useViewer();
  const [draft, setDraft] = useState<RuleDraft>(() => emptyRule(organization.today));
  const [asked, setAsked] = useState<RuleDraft | null>(null);
  const query = useQuery(suppliersDocument);
  return (
    <Fetched query={query}>
      {({ waterSuppliers, crews }) => {
        const supplier = waterSuppliers.find(({ id }) => id === supplierId);
        if (!supplier) return <NotFoundPage />;
        const rules = supplier.rules.filter(({ retiredAt }) => !retiredAt).map(({ id, name }) => ({ value: id, words: name }));
        return (
          <>
            <PageHead
              sentence={intl.formatMessage({ id: 'ruleChange.title' }, { supplier: supplier.name })}
              lede={<FormattedMessage id="ruleChange.lede" />}
            />
            <Section heading={intl.formatMessage({ id: 'ruleChange.rule' })}>
              <RuleForm draft={draft} rules={rules} onChange={setDraft} onAsk={() => setAsked(draft)} />
            </Section>
            {asked && (
              <WhatChanges
                key={JSON.stringify(asked)}
                rule={ruleInput(supplierId, asked)}
                replaces={asked.replaces || null}
                crews={crews}
                today={organization.today}
              />
            )}
          </>
        );
      }}
    </Fetched>
  );
}
