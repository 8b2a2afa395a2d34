import { questionnaireOf } from '../../domain/measures/catalogue.js';
import type { Measure, Threshold } from '../../domain/measures/measure.js';
import { equationsFor, normsFor } from '../../domain/prediction/catalogue.js';
import { EmptyState, Tag } from '../components/parts.js';
import { Definitions, Table, Text } from '../components/table.js';
import type { Frame } from '../frame.js';
import { Citation } from './citation.js';
import { DefinitionsPage } from './definitions-page-frame.js';
import { numberWords, rangeWords, sizeWords } from './numbers.js';

interface MeasureViewProps {
  readonly frame: Frame;
  readonly measure: Measure;
}

/** All that is known of one measure, with its sources. */
export function MeasureView({ frame, measure }: MeasureViewProps): JSX.Element {
  const { unit, range, note } = measure;
  const form = questionnaireOf(measure.id);
  const predictions = [...equationsFor(measure.id), ...normsFor(measure.id)].map(({ title }) => title);
  return (
    <DefinitionsPage frame={frame} title={`${measure.name} (${measure.shortName})`}>
      <Definitions
        items={[
          { term: 'Unit', value: <Text value={unit} /> },
          { term: 'Better when', value: <Text value={measure.betterWhen} /> },
          { term: 'Limits', value: <Text value={rangeWords(range, unit)} /> },
          ...(range.step === null
            ? []
            : [{ term: 'Steps', value: <Text value={sizeWords(range.step, unit)} /> }]),
          { term: 'Source of the limits', value: <Citation citation={range.citation} /> },
          ...(form === undefined
            ? []
            : [
                { term: 'Scoring', value: <Citation citation={form.scoringRule.citation} /> },
                { term: 'Missing items', value: <Citation citation={form.missingItemRule.citation} /> },
                { term: 'Terms of use', value: <Text value={form.licenceNote.text} /> },
              ]),
          ...(predictions.length === 0
            ? []
            : [{ term: 'Predicted by', value: <Text value={predictions.join('; ')} /> }]),
          ...(note === null ? [] : [{ term: 'Note', value: <Text value={note} /> }]),
        ]}
      />
      <h2>Minimal important differences</h2>
      {measure.thresholds.length === 0 ? (
        <EmptyState>None is known: change is reported and not judged.</EmptyState>
      ) : (
        <Table
          caption="Thresholds, as their sources give them"
          columns={[
            { head: 'Size', isNumber: true },
            { head: 'Range or 95 % interval' },
            { head: 'For' },
            { head: 'People and method' },
            { head: 'n', isNumber: true },
            { head: 'Source' },
          ]}
          rows={measure.thresholds.map((threshold) => thresholdCells(threshold, unit))}
        />
      )}
      {measure.bands.map((set) => (
        <>
          <h2>Bands</h2>
          <Table
            caption={set.isDefault ? 'Bands in use' : 'Other bands'}
            columns={[{ head: 'Band' }, { head: 'From', isNumber: true }, { head: 'To', isNumber: true }]}
            rows={set.bands.map(({ label, from, to }) => [
              <Text value={label} />,
              <Text value={String(from)} />,
              <Text value={String(to)} />,
            ])}
          />
          <p>
            Source: <Citation citation={set.citation} />
          </p>
        </>
      ))}
    </DefinitionsPage>
  );
}

function thresholdCells(threshold: Threshold, unit: string): readonly JSX.Element[] {
  const { value, interval, purpose, isDefault, population, method, n, note, citation } = threshold;
  return [
    <Text value={value === null ? 'a range only' : sizeWords(value, unit)} />,
    <Text value={interval === null ? '' : `${numberWords(interval.low)} to ${numberWords(interval.high)}`} />,
    <span>
      <span>{purpose}</span> {isDefault ? <Tag kind="good" label="usual" /> : ''}
    </span>,
    <Text value={`${population}; ${method}${note === null ? '' : `. ${note}`}`} />,
    <Text value={n === null ? 'not known' : String(n)} />,
    <Citation citation={citation} />,
  ];
}
