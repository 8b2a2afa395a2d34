import type { Block, Table } from '../../../documents/document-model.js';
import { changeBars } from '../../../plots/change-bars.js';
import type { MeasureOutcomes } from '../report-model.js';
import type { Distribution } from '../section-models.js';
import { count, membersLink, number, withTrueMinus } from './cells.js';
import { midOf } from './mid.js';

/** Of fewer pairs than this their spread is not drawn. */
const LEAST_TO_DRAW = 5;

/** How the changes spread: of too few pairs there is nothing to draw. */
export function spreadBlocks(outcome: MeasureOutcomes, distribution: Distribution): readonly Block[] {
  const { measureId, shortName, unit, betterWhen, likeForLike } = outcome;
  const mid = midOf(outcome);
  const table = distributionTable(`${shortName}: pairs by change`, distribution, unit);
  if (likeForLike.pairs < LEAST_TO_DRAW) {
    const few = `Fewer than ${LEAST_TO_DRAW} pairs like for like: how they spread is not drawn, since a drawing would seem to show more than is known.`;
    return [
      { kind: 'paragraph', text: few },
      { kind: 'table', table },
    ];
  }
  const title = `${shortName}: how ${likeForLike.pairs} like-for-like changes spread`;
  const at = betterWhen === 'higher' ? mid : mid === null ? null : -mid;
  const plot = changeBars({
    id: `plot-spread-${measureId}`,
    title,
    classes: distribution.classes.map(({ from, to, pairs }) => ({ from, to, count: pairs })),
    betterWhen,
    mid: at === null ? null : { at, label: withTrueMinus(`MID ${at} ${unit}`) },
    axis: `change, ${unit}`,
  });
  return [{ kind: 'plot', title, plot, table }];
}

function distributionTable(caption: string, { classes, holdsEnd }: Distribution, unit: string): Table {
  const [from, to] = holdsEnd === 'lower' ? ['from', 'to below'] : ['above', 'up to'];
  return {
    caption,
    columns: [
      { head: `Change ${from}, ${unit}`, kind: 'number' },
      { head: to, kind: 'number' },
      { head: 'Pairs', kind: 'number' },
    ],
    rows: classes.map((each) => [
      number(each.from, placesOf(each.from)),
      number(each.to, placesOf(each.to)),
      count(each.pairs, membersLink(each.figureId, 'numerator')),
    ]),
  };
}

/** Decimal places that the end of a class needs. */
function placesOf(value: number): number {
  return (String(value).split('.')[1] ?? '').length;
}
