import { MEASURES } from '../../domain/measures/catalogue.js';
import type { Measure } from '../../domain/measures/measure.js';
import { Table, Text } from '../components/table.js';
import type { Frame } from '../frame.js';
import { StatusMark } from './citation.js';
import { DefinitionsPage } from './definitions-page-frame.js';
import { rangeWords, sizeWords } from './numbers.js';

/** Every measure in a line, leading to all that is known of it. */
export function MeasuresView({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <DefinitionsPage frame={frame} title="Measures">
      <p>
        The usual minimal important difference (MID) holds where a team has chosen no other. A mark says where
        a figure was not read in its own source.
      </p>
      <Table
        caption={`${MEASURES.length} measures`}
        isStacked
        columns={[
          { head: 'Measure' },
          { head: 'Short' },
          { head: 'Better when' },
          { head: 'Limits' },
          { head: 'Usual MID' },
        ]}
        rows={MEASURES.map((measure) => [
          <a href={`/definitions/measures/${measure.id}`} safe>
            {measure.name}
          </a>,
          <Text value={measure.shortName} />,
          <Text value={measure.betterWhen} />,
          <Text value={rangeWords(measure.range, measure.unit)} />,
          <UsualThreshold measure={measure} />,
        ])}
      />
    </DefinitionsPage>
  );
}

function UsualThreshold({ measure }: { readonly measure: Measure }): JSX.Element {
  const usual = measure.thresholds.find(({ isDefault, purpose }) => isDefault && purpose === 'improvement');
  if (usual === undefined || usual.value === null)
    return <Text value="none: change is reported, not judged" />;
  return (
    <span>
      <span safe>{sizeWords(usual.value, measure.unit)}</span> <StatusMark status={usual.citation.status} />
    </span>
  );
}
