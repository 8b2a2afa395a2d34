import { britishDate } from '../../domain/calendar/british-date.js';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { shownValue } from '../../domain/measures/shown-value.js';
import { changeStrips } from '../../plots/change-strips.js';
import type { EndResult, MeasureOutcome, Outcomes } from '../../reports/outcomes/outcomes-model.js';
import { EmptyState, Tag } from '../components/parts.js';
import { Table, Text } from '../components/table.js';
import {
  classWords,
  marksOf,
  changeInWords,
  plain,
  predictedWords,
  scaleWords,
  signedChange,
  thresholdWords,
  timesMid,
} from './measure-words.js';

/** Baseline beside discharge for every measure, and the changes against the MID. */
export function ChangeFigure({ outcomes }: { readonly outcomes: Outcomes }): JSX.Element {
  const { measures } = outcomes;
  return (
    <section>
      <h2>Baseline beside discharge</h2>
      {measures.length === 0 ? (
        <EmptyState>Nothing has been measured yet.</EmptyState>
      ) : (
        <>
          <EndsTable measures={measures} />
          <ChangePlot measures={measures} />
        </>
      )}
    </section>
  );
}

function EndsTable({ measures }: { readonly measures: readonly MeasureOutcome[] }): JSX.Element {
  return (
    <Table
      caption="Each measure at both ends"
      isStacked
      columns={[
        { head: 'Measure' },
        { head: 'Baseline', isNumber: true },
        { head: 'Discharge', isNumber: true },
        { head: 'Change', isNumber: true },
        { head: 'Against the MID' },
        { head: 'MID, and in whom it was found' },
        { head: 'Times the MID', isNumber: true },
      ]}
      rows={measures.map((measure) => [
        <MeasureName measure={measure} />,
        <End end={measure.baseline} unit={measure.unit} />,
        <End end={measure.discharge} unit={measure.unit} />,
        <Text value={signedChange(measure)} />,
        <InWords measure={measure} />,
        <Text value={thresholdWords(measure.improvementThreshold, measure.unit)} />,
        <Text value={multipleWords(measure)} />,
      ])}
    />
  );
}

function MeasureName({ measure }: { readonly measure: MeasureOutcome }): JSX.Element {
  return (
    <span>
      <a href={`/definitions/measures/${measure.measureId}`} safe>
        {measure.name}
      </a>
      <br />
      <span class="muted small" safe>
        {scaleWords(measure.measureId)}
      </span>
    </span>
  );
}

/** Better is positive. @example '1.1' */
function multipleWords(measure: MeasureOutcome): string {
  const multiple = timesMid(measure);
  return multiple === null ? '' : plain(Number(multiple.toFixed(1)));
}

function End({ end, unit }: { readonly end: EndResult | null; readonly unit: string }): JSX.Element {
  if (end === null) return <span class="muted">not measured</span>;
  const predicted = predictedWords(end);
  return (
    <span>
      <span safe>{shownValue(end.value, unit)}</span>
      <br />
      <span class="muted small" safe>
        {britishDate(end.assessedOn)}
      </span>
      {predicted === null ? (
        ''
      ) : (
        <>
          <br />
          <span class="small wraps" safe>
            {predicted}
          </span>
        </>
      )}
    </span>
  );
}

const TAG_KINDS = {
  improved: 'good',
  worse: 'warning',
  'little-change': 'plain',
  'change-only': 'plain',
} as const;

function InWords({ measure }: { readonly measure: MeasureOutcome }): JSX.Element {
  const { class: kind } = measure;
  return (
    <span class="marks">
      {kind === null ? (
        <Text value={classWords(measure)} />
      ) : (
        <Tag kind={TAG_KINDS[kind]} label={classWords(measure)} />
      )}
      {marksOf(measure).map((mark) => (
        <Tag kind="check" label={mark} />
      ))}
    </span>
  );
}

/** Measures that have a pair and a MID, in multiples of it: only so can changes of different units stand on one axis. */
function ChangePlot({ measures }: { readonly measures: readonly MeasureOutcome[] }): JSX.Element {
  const strips = measures.flatMap((measure) => {
    const { measureId, name } = measure;
    const multiple = timesMid(measure);
    if (multiple === null) return [];
    const label = findMeasure(measureId)?.shortName ?? name;
    return [{ label, words: changeInWords(measure), timesMid: multiple }];
  });
  if (strips.length === 0) return '';
  const title = 'Change of each measure in multiples of its MID, better to the right';
  const { svg: safeDrawing } = changeStrips({ id: 'change-plot', title, strips });
  return (
    <figure>
      <figcaption>{title}</figcaption>
      <div class="plot">{safeDrawing}</div>
      <p class="muted small">
        The table above gives the same in numbers. The change of one person has no interval.
      </p>
    </figure>
  );
}
