import { describe, expect, it } from 'vitest';
import { buildQuarterlyReport } from '../../../src/reports/quarterly/build-quarterly-report.js';
import { figuresOfReferral, openFigure } from '../../../src/reports/quarterly/open-figure.js';
import { figuresIn } from '../../support/reported.js';
import { WORKED_INPUT } from '../../support/worked-quarter.js';

const report = buildQuarterlyReport(WORKED_INPUT);
const figures = [...new Map(figuresIn(report).map((figure) => [figure.id, figure])).values()];

describe('every figure of the report opens', () => {
  it.each(figures.map((figure) => [figure.id, figure] as const))('%s', (id, figure) => {
    const opened = openFigure(WORKED_INPUT, id);
    expect(opened?.figure).toEqual(figure);
    const kinds = (opened?.members ?? []).map((member) => member.kind);
    const count = (kind: string): number => kinds.filter((each) => each === kind).length;
    expect(count('numerator')).toBe(figure.numerator);
    expect(count('not-numerator')).toBe(figure.denominator - figure.numerator);
    expect(count('open')).toBe(figure.open);
    expect(count('excluded')).toBe(figure.excluded.reduce((sum, each) => sum + each.count, 0));
    expect(opened?.members.filter((member) => member.reason === '')).toEqual([]);
  });

  it('to its members with their reasons: completion of those started', () => {
    const members = openFigure(WORKED_INPUT, 'completed-of-started')?.members ?? [];
    // By how they count, then by receipt: R13 was received on 28 April, R12 on 5 May.
    expect(members.map(({ referralId, kind, reason }) => `${referralId} ${kind}: ${reason}`)).toEqual([
      'R01 numerator: 12 of 12 sessions attended, discharge assessment done',
      'R03 numerator: 9 of 12 sessions attended, discharge assessment done',
      'R13 numerator: 7 of 9 sessions attended, discharge assessment done',
      'R12 numerator: 12 of 12 sessions attended, discharge assessment done',
      'R04 not-numerator: Closed: 8 of 12 sessions attended, discharge assessment done',
      'R05 not-numerator: Closed: 3 of 12 sessions attended, no discharge assessment',
      'R08 not-numerator: Not closed, long past the planned end: 10 of 12 sessions attended, no discharge assessment',
      'R17 not-numerator: Closed: 4 of 12 sessions attended, no discharge assessment',
      'R09 open: Not closed: 6 of 12 sessions attended, no discharge assessment',
    ]);
  });

  it('names the exclusion of those left out, and of nobody else', () => {
    const members = openFigure(WORKED_INPUT, 'uptake')?.members ?? [];
    const named = members.filter(({ exclusion }) => exclusion !== null);
    expect(named.map(({ referralId, exclusion }) => [referralId, exclusion])).toEqual([
      ['R18', 'moved-away-before-start'],
      ['R06', 'died-before-start'],
      ['R14', 'registered-in-error'],
    ]);
  });

  it('unless there is no such figure', () => {
    expect(openFigure(WORKED_INPUT, 'no-such-figure')).toBeNull();
    expect(openFigure(WORKED_INPUT, 'mid-reached.no-such-measure')).toBeNull();
  });
});

describe('from a referral back to its figures', () => {
  const ofR04 = figuresOfReferral(WORKED_INPUT, 'R04');
  const said = (figureId: string): string => {
    const found = ofR04.find((each) => each.figureId === figureId);
    return found === undefined ? 'not in it' : `${found.kind}: ${found.reason}`;
  };

  it('says where the person counts and why', () => {
    expect(said('started-within-90-days')).toBe('numerator: Started on day 24');
    expect(said('completed-of-started')).toContain('not-numerator: Closed: 8 of 12');
    expect(said('mid-reached.cat-total')).toBe(
      'not-numerator: Worse by 1\u00a0point, threshold 2\u00a0points',
    );
    expect(said('mid-reached.incremental-shuttle-walk-distance')).toContain('excluded: Not like for like');
  });

  it('agrees with the members of each figure', () => {
    for (const { figureId, kind, reason } of ofR04) {
      const members = openFigure(WORKED_INPUT, figureId)?.members ?? [];
      const member = members.find((each) => each.referralId === 'R04');
      expect([figureId, member?.kind, member?.reason]).toEqual([figureId, kind, reason]);
    }
    expect(ofR04.length).toBeGreaterThan(60);
  });

  it('needs the facts of that referral only', () => {
    const facts = WORKED_INPUT.facts.filter((each) => each.referralId === 'R04');
    expect(figuresOfReferral({ ...WORKED_INPUT, facts }, 'R04')).toEqual(ofR04);
  });

  it('is empty for a referral of another period', () => {
    expect(figuresOfReferral(WORKED_INPUT, 'R99')).toEqual([]);
  });
});
