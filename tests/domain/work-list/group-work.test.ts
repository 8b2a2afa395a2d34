import { expect, it } from 'vitest';
import { groupWork } from '../../../src/domain/work-list/group-work.js';
import { GROUP_ORDER, GROUPS } from '../../../src/domain/work-list/groups.js';
import { classDue } from '../../../src/domain/work-list/class-due.js';
import { WORK_GROUPS } from '../../../src/domain/work-list/work-list.js';
import { plainDate } from '../../../src/domain/calendar/plain-date.js';

const entry = (id: string, dueOn: string, daysLate: number) =>
  ({ group: 'triage', id, dueOn, daysLate }) as const;

it('puts the oldest first, and of one day always in the same order', () => {
  const entries = [entry('c', '2026-05-02', 0), entry('b', '2026-05-01', 1), entry('a', '2026-05-02', 0)];
  const [triage] = groupWork(entries, ['triage']);
  expect(triage?.entries.map(({ id }) => id)).toEqual(['b', 'a', 'c']);
});

it('counts what is due today as not late', () => {
  const entries = [entry('a', '2026-05-01', 1), entry('b', '2026-05-02', 0), entry('c', '2026-05-03', -1)];
  expect(groupWork(entries, ['triage', 'booking'])).toMatchObject([
    { group: 'triage', count: 3, late: 1 },
    { group: 'booking', count: 0, late: 0, entries: [] },
  ]);
});

it.each(['admin', 'clinician', 'lead'] as const)('gives %s every group once', (role) => {
  expect([...GROUP_ORDER[role]].sort()).toEqual([...WORK_GROUPS].sort());
  expect(Object.keys(GROUPS).sort()).toEqual([...WORK_GROUPS].sort());
});

it.each([
  ['2026-05-04', { dueOn: '2026-05-04', reason: 'Of 4 May 2026, never registered' }],
  ['2026-05-05', { dueOn: '2026-05-05', reason: 'Today, not registered yet' }],
  ['2026-05-06', null],
])('asks for the register of a class of %s as at 5 May', (heldOn, due) => {
  expect(classDue(plainDate(heldOn), plainDate('2026-05-05'))).toEqual(due);
});
