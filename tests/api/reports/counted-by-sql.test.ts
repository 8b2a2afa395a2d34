import BetterSqlite from 'better-sqlite3';
import type { Database } from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Figure } from '../../../src/domain/indicators/figure.js';
import type { QuarterlyReport } from '../../../src/reports/quarterly/report-model.js';
import { givenDemo, reportOf } from '../../support/report.js';
import { figuresIn, outcomesOf } from '../../support/reported.js';
import { startApp } from '../../support/start-app.js';
import type { TestApp } from '../../support/start-app.js';

/*
 * The same figures a second time, counted by the database from the stored tables: statements written from the rules of
 * counting in words, with nothing of the program that makes the report.
 */

const OF = { first: '2025-04-01', last: '2026-03-31', cut: '2026-11-25' };

/** The first supervised session attended. */
const STARTS = `
  start as (
    select attendance.referral_id, min(session.held_on) as started_on
    from attendance join session on session.id = attendance.session_id
    where attendance.outcome = 'attended' and attendance.superseded_at is null
      and session.is_supervised = 1 and session.entered_in_error_at is null
    group by attendance.referral_id
  )`;

/** Every referral of the team but those entered or registered in error. */
const REFERRALS = `
  own as (
    select * from referral
    where team_id = (select id from team order by (select count(*) from referral r where r.team_id = team.id) desc limit 1)
      and entered_in_error_at is null and coalesce(closure_reason, '') <> 'registered-in-error'
  )`;

const COMPETING = `('died', 'moved-away', 'transferred')`;
const TURNED_AWAY = `coalesce(triage_decision, '') in ('not-suitable', 'redirected')`;

describe('figures of a year, counted again in SQL', () => {
  let service: TestApp;
  let database: Database;
  let report: QuarterlyReport;
  beforeAll(async () => {
    service = await startApp();
    const [lead] = await givenDemo(service, 0.12);
    report = (await reportOf(lead ?? service.as(null), 'period=2025-26')) as unknown as QuarterlyReport;
    database = new BetterSqlite(service.databaseFile, { readonly: true });
  });
  afterAll(async () => {
    database.close();
    await service.close();
  });

  const row = (sql: string): Readonly<Record<string, number>> =>
    database.prepare(`with ${STARTS}, ${REFERRALS} ${sql}`).get(OF) as Record<string, number>;
  const figure = (id: string): Figure => {
    const found = figuresIn(report).find((each) => each.id === id);
    if (found === undefined) throw new Error(`The report has no ${id}.`);
    return found;
  };

  it('referrals received, and people', () => {
    const counted = row(`
      select count(*) as referrals, count(distinct patient_id) as people
      from own where received_on between $first and $last and $cut > ''`);
    expect(counted['referrals']).toBeGreaterThan(20);
    expect(report.cohorts.referral).toMatchObject(counted);
  });

  it('uptake: who started, of those who neither wait nor left for a reason of their own', () => {
    const { numerator, denominator } = row(`
      select count(started_on) as numerator,
        sum(started_on is not null or (coalesce(closure_reason, '') not in ${COMPETING}
          and (closed_on is not null or ${TURNED_AWAY}))) as denominator
      from own left join start on start.referral_id = own.id
      where received_on between $first and $last and $cut > ''`);
    expect(numerator).toBeGreaterThan(10);
    expect(figure('uptake')).toMatchObject({ numerator, denominator });
  });

  it('started within 90 days: day 90 counts, and a death, a move or a transfer by day 90 is left out', () => {
    const { numerator, denominator } = row(`
      select sum(coalesce(wait <= 90, 0)) as numerator,
        sum(not (coalesce(wait, 999) > 90 and coalesce(closure_reason, '') in ${COMPETING}
          and julianday(closed_on) - julianday(received_on) <= 90)) as denominator
      from (
        select own.*, julianday(started_on) - julianday(received_on) as wait
        from own left join start on start.referral_id = own.id
        where received_on between $first and $last and julianday($cut) - julianday($last) > 90
      )`);
    expect(denominator).toBeGreaterThan(20);
    expect(figure('started-within-90-days')).toMatchObject({ numerator, denominator, open: 0 });
  });

  it('completion: three quarters of the sessions and a discharge assessment, of those who started', () => {
    const { numerator, denominator } = row(`
      select count(*) as denominator, sum(4 * attended >= 3 * (planned - cancelled) and discharged) as numerator
      from (
        select coalesce(own.planned_sessions, 12) as planned,
          (select count(*) from attendance join session on session.id = session_id
            where referral_id = own.id and outcome = 'attended' and superseded_at is null
              and is_supervised = 1 and session.entered_in_error_at is null) as attended,
          (select count(*) from attendance join session on session.id = session_id
            where referral_id = own.id and outcome = 'cancelled-by-service' and superseded_at is null
              and is_supervised = 1 and session.entered_in_error_at is null) as cancelled,
          exists (select 1 from assessment where referral_id = own.id and timepoint = 'discharge'
            and superseded_at is null and entered_in_error_at is null) as discharged
        from own join start on start.referral_id = own.id
        where started_on between $first and $last and $cut > ''
      )`);
    expect(denominator).toBeGreaterThan(10);
    expect(figure('completed-of-started')).toMatchObject({ numerator, denominator, open: 0 });
  });

  it('reached the MID of the CAT: better by 2 points or more, of pairs by the same form; and the mean change', () => {
    // A score with items missing is a fraction.
    const counted = row(`, cat as (
        select assessment.referral_id, timepoint, assessed_on, 1.0 * score.numerator / score.denominator as points, form
        from assessment
        join score on score.assessment_version_id = version_id and measure = 'cat-total'
        join questionnaire on questionnaire.assessment_version_id = version_id
          and questionnaire.instrument = score.instrument
        where superseded_at is null and entered_in_error_at is null
      ), discharged as (
        select own.id, started_on, coalesce(
            (select min(assessed_on) from assessment where referral_id = own.id and timepoint = 'discharge'
              and superseded_at is null and entered_in_error_at is null), closed_on) as day
        from own join start on start.referral_id = own.id
      ), pair as (
        select (select points || '/' || coalesce(form, '') from cat where referral_id = id and timepoint = 'baseline'
            order by assessed_on > started_on, case when assessed_on > started_on then assessed_on end,
              assessed_on desc limit 1) as before,
          (select points || '/' || coalesce(form, '') from cat where referral_id = id and timepoint = 'discharge'
            order by assessed_on desc limit 1) as after
        from discharged where day between $first and $last and $cut > ''
      )
      select count(*) as denominator, sum(cast(before as real) - cast(after as real) > 2 - 1e-9) as numerator,
        avg(cast(after as real) - cast(before as real)) as mean
      from pair where before is not null and after is not null
        and substr(before, instr(before, '/')) = substr(after, instr(after, '/'))`);
    expect(counted['denominator']).toBeGreaterThan(5);
    const { midReached, change } = outcomesOf(report, 'cat-total').likeForLike;
    expect(midReached).toMatchObject({
      numerator: counted['numerator'],
      denominator: counted['denominator'],
    });
    expect(change.mean).toBeCloseTo(counted['mean'] ?? NaN, 9);
  });

  it('waiting now for more than 90 days, whenever received', () => {
    const { numerator, denominator } = row(`
      select count(*) as denominator, sum(julianday($cut) - julianday(received_on) > 90) as numerator
      from own left join start on start.referral_id = own.id
      where received_on <= $cut and started_on is null and closed_on is null and not ${TURNED_AWAY}
        and $first < $last`);
    expect(denominator).toBeGreaterThan(2);
    expect(figure('waiting-now.more-than-90-days')).toMatchObject({ numerator, denominator });
  });
});
