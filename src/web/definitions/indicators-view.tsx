import { INDICATORS } from '../../domain/indicators/registered.js';
import { COMPLETION_RULES } from '../../domain/pathway/completion.js';
import { Definitions, Text } from '../components/table.js';
import type { Frame } from '../frame.js';
import { Citation } from './citation.js';
import { DefinitionsPage } from './definitions-page-frame.js';

const COHORT_WORDS = {
  referral: 'referrals received in the period',
  start: 'referrals whose programme began in the period',
  discharge: 'referrals that ended in the period',
} as const;

/** Every indicator with its rule: who counts, out of whom, who is left out, and where it comes from. */
export function IndicatorsView({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <DefinitionsPage frame={frame} title="Indicators">
      <p>
        Those who are not decided at the data cut are counted beside each figure, neither as success nor as
        failure.
      </p>
      {INDICATORS.map((indicator) => (
        <section>
          <h2 id={`indicator-${indicator.id}`} safe>
            {indicator.title}
          </h2>
          <Definitions
            items={[
              { term: 'Counts', value: <Text value={indicator.numerator} /> },
              { term: 'Out of', value: <Text value={indicator.denominator} /> },
              {
                term: 'Left out',
                value: <Text value={indicator.exclusions ?? 'nobody but those registered in error'} />,
              },
              { term: 'Cohort', value: <Text value={COHORT_WORDS[indicator.cohort]} /> },
              {
                term: 'Rule',
                value: <span class="code" safe>{`${indicator.id}@${indicator.version}`}</span>,
              },
              { term: 'Source', value: <Citation citation={indicator.source} /> },
            ]}
          />
        </section>
      ))}
      <h2>Readings of completion</h2>
      {Object.values(COMPLETION_RULES).map((rule) => (
        <section>
          <h3 safe>{rule.title}</h3>
          <Definitions
            items={[
              { term: 'Rule', value: <Text value={rule.text} /> },
              {
                term: 'Id',
                value: (
                  <span class="code" safe>
                    {rule.ruleId}
                  </span>
                ),
              },
              { term: 'Source', value: <Citation citation={rule.source} /> },
            ]}
          />
        </section>
      ))}
    </DefinitionsPage>
  );
}
