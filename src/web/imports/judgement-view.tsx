import { heldBackWords, ROW_VERDICTS } from '../../domain/imports/judgement.js';
import type { JudgedRow, Judgement } from '../../domain/imports/judgement.js';
import { Table, Text } from '../components/table.js';
import { PASSED_OVER_WORDS, VERDICT_WORDS } from './import-words.js';

/** Rows shown on the page; all of them come with the file of the rows to mend. */
const MOST_ROWS = 100;

/** What becomes, or became, of the rows of a sheet. */
export function JudgementView({
  judgement,
  isDone,
}: {
  readonly judgement: Judgement;
  readonly isDone: boolean;
}): JSX.Element {
  const told = judgement.rows.filter(({ faults, passedOver }) => faults.length > 0 || passedOver !== null);
  return (
    <>
      <Table
        caption={isDone ? 'What became of the rows' : 'What would become of the rows; nothing is written yet'}
        columns={[{ head: 'Rows' }, { head: 'Number', isNumber: true }]}
        rows={ROW_VERDICTS.map((verdict) => [
          <Text value={VERDICT_WORDS[verdict]} />,
          <Text value={String(judgement.counts[verdict])} />,
        ])}
      />
      {told.length === 0 ? (
        ''
      ) : (
        <Table
          caption={
            told.length > MOST_ROWS
              ? `The first ${MOST_ROWS} of ${told.length} rows that are not simply taken`
              : 'Rows that are not simply taken'
          }
          isStacked
          columns={[
            { head: 'Row', isNumber: true },
            { head: 'Column' },
            { head: 'In the cell' },
            { head: 'What is said of it' },
          ]}
          rows={told.slice(0, MOST_ROWS).flatMap(linesOf)}
        />
      )}
    </>
  );
}

function linesOf(row: JudgedRow): readonly (readonly JSX.Element[])[] {
  const { number, verdict, faults, passedOver } = row;
  const heldBack = heldBackWords(row);
  if (passedOver !== null) {
    return [
      [
        <Text value={String(number)} />,
        <Text value="" />,
        <Text value="" />,
        <Text value={PASSED_OVER_WORDS[passedOver]} />,
      ],
    ];
  }
  const lines = faults.map(({ heading, value, message }) => ({
    ...{ heading: heading ?? 'The row', value },
    words: verdict === 'unusual' ? `Unusual. ${message}` : message,
  }));
  if (heldBack !== null) lines.push({ heading: 'The row', value: '', words: heldBack });
  return lines.map(({ heading, value, words }) => [
    <Text value={String(number)} />,
    <Text value={heading} />,
    <Text value={value} />,
    <Text value={words} />,
  ]);
}
