import { findMeasure } from '../../domain/measures/catalogue.js';
import type { AgesStudied, PredictionEquation } from '../../domain/prediction/prediction-equation.js';
import { NORMS, PREDICTION_EQUATIONS } from '../../domain/prediction/registered.js';
import { Definitions, Text } from '../components/table.js';
import type { Frame } from '../frame.js';
import { Citation } from './citation.js';
import { DefinitionsPage } from './definitions-page-frame.js';
import { formulaWords } from './numbers.js';

/** Every equation and norm, with its people, formula, cautions and source. */
export function EquationsView({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <DefinitionsPage frame={frame} title="Equations and norms">
      <p>
        A percentage predicted compares somebody with healthy people of a sample. Read its cautions first.
      </p>
      {PREDICTION_EQUATIONS.map((equation) => (
        <EquationView equation={equation} />
      ))}
      <h2>Norms by age and sex</h2>
      {NORMS.map((norm) => (
        <section>
          <h3 id={`norm-${norm.id}`} safe>
            {norm.title}
          </h3>
          <Definitions
            items={[
              { term: 'Measure', value: <MeasureLink measureId={norm.measureId} /> },
              { term: 'People', value: <Text value={`${norm.population}, n = ${norm.n}`} /> },
              { term: 'What the figures are', value: <Text value={norm.meaning} /> },
              { term: 'Cautions', value: <Text value={norm.cautions.join(' ')} /> },
              { term: 'Source', value: <Citation citation={norm.citation} /> },
            ]}
          />
        </section>
      ))}
    </DefinitionsPage>
  );
}

function EquationView({ equation }: { readonly equation: PredictionEquation }): JSX.Element {
  const { lowerLimitRule } = equation;
  return (
    <section>
      <h2 id={`equation-${equation.id}`} safe>
        {equation.title}
      </h2>
      <Definitions
        items={[
          { term: 'Measure', value: <MeasureLink measureId={equation.measureId} /> },
          { term: 'People', value: <Text value={`${equation.population}, n = ${equation.n}`} /> },
          { term: 'Ages studied', value: <Text value={agesWords(equation.agesStudiedYears)} /> },
          { term: 'Formula', value: <Text value={formulaWords(equation.formula)} /> },
          { term: 'Lower limit of normal', value: <Text value={lowerLimitRule?.text ?? 'not given'} /> },
          { term: 'Cautions', value: <Text value={equation.cautions.join(' ')} /> },
          { term: 'Source', value: <Citation citation={equation.citation} /> },
        ]}
      />
    </section>
  );
}

function MeasureLink({ measureId }: { readonly measureId: string }): JSX.Element {
  return (
    <a href={`/definitions/measures/${measureId}`} safe>
      {findMeasure(measureId)?.name ?? measureId}
    </a>
  );
}

/** @example agesWords({ min: 40, max: 80, ... }) -> '40 to 80 years' */
function agesWords({ min, max }: AgesStudied): string {
  if (min === null && max === null) return 'not known';
  if (min === null) return `up to ${max ?? ''} years`;
  return max === null ? `from ${min} years` : `${min} to ${max} years`;
}
