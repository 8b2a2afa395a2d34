import { changesBetween } from '../../domain/history/field-change.js';
import type { ReportPart } from '../../usecases/reports/report-request.js';
import type { HistoryWords } from '../components/history-list.js';
import { fieldWords, valueWords } from '../components/value-words.js';
import type { RecordWords } from '../components/value-words.js';
import { assessmentHistoryWords } from '../referral/assessment-history-words.js';
import { recordWords } from '../referral/record-words.js';
import { SETTINGS_WORDS } from './settings-history-words.js';

/** A session is a class to whoever reads the trail, since people also have sessions of being signed in. */
const CLASS_ACTIONS: Readonly<Record<string, string>> = {
  'session-registered': 'Class registered',
  'session-corrected': 'Class corrected',
  'sessions-listed': 'Classes listed',
  'session-read': 'Class read',
};

/** What happened, in words. @example actionWords('second-factor-removed') -> 'Second factor removed' */
export function actionWords(action: string): string {
  return CLASS_ACTIONS[action] ?? fieldWords(action);
}

/** Details whose own names say less than these. */
const DETAILS: Readonly<Record<string, string>> = {
  referralIds: 'Referrals',
  patientIds: 'People',
  sessionIds: 'Classes',
  importIds: 'Imports',
  operationId: 'What was asked for',
  addressHash: 'Address it came from, as a digest',
  asAt: 'Data cut',
  figureId: 'Figure',
  include: 'With other periods',
};

/** Parts of a report that read other periods. */
const PARTS: Readonly<Record<string, string>> = {
  comparisons: 'beside earlier periods',
  trend: 'over twelve quarters',
} satisfies Readonly<Record<ReportPart, string>>;

/** An entry as its details are told. */
export interface ToldEvent {
  readonly action: string;
  /** JSON. */
  readonly details: string;
}

/**
 * The details of an entry, a line each: what changed from what to what, the reason, what was read.
 *
 * @param names of the sites and commissioners of the team, by id
 * @example detailLines(settings changed from 12 to 16 sessions) -> 'Supervised sessions planned: 12 sessions → 16 sessions'
 */
export function detailLines(
  { action, details }: ToldEvent,
  names: ReadonlyMap<string, string>,
): readonly string[] {
  const words = wordsFor(action, names);
  const parsed = JSON.parse(details) as Readonly<Record<string, unknown>>;
  return Object.entries(parsed).flatMap(([name, value]) => {
    if (value === null) return [];
    if (name === 'changes') return changeLines(value as Changes, words);
    return [`${DETAILS[name] ?? fieldWords(name)}: ${toldValue(name, value, words)}`];
  });
}

function wordsFor(action: string, names: ReadonlyMap<string, string>): HistoryWords {
  if (action === 'settings-changed') return { isTold: () => true, ...SETTINGS_WORDS };
  return action.startsWith('assessment-') ? assessmentHistoryWords(names) : recordWords(names);
}

type Changes = Readonly<Record<string, readonly [unknown, unknown]>>;

/** What was there before is told where anything was. */
function changeLines(changes: Changes, words: HistoryWords): readonly string[] {
  const sideOf = (side: 0 | 1) =>
    Object.fromEntries(Object.entries(changes).map(([field, pair]) => [field, keyedById(pair[side])]));
  const told = changesBetween(sideOf(0), sideOf(1)).filter(({ field }) => words.isTold(field));
  const isNew = told.every(({ former }) => former === null);
  return told.map(({ field, former, present }) => {
    // The entries of a register stand in the trail by the id of the referral alone.
    const of = UUID.test(field) ? `attendances.${field}` : field;
    const said = (value: unknown) => words.value(of, value);
    return isNew
      ? `${words.field(of)}: ${said(present)}`
      : `${words.field(of)}: ${said(former)} \u2192 ${said(present)}`;
  });
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Parts that have an id, such as offers, by it: what changed within one of them can then be told. */
function keyedById(value: unknown): unknown {
  if (!Array.isArray(value) || value.length === 0) return value;
  const parts = value as readonly unknown[];
  const isKeyed = parts.every((part) => typeof part === 'object' && part !== null && 'id' in part);
  return isKeyed
    ? Object.fromEntries(
        (parts as readonly { readonly id: unknown }[]).map((part) => [String(part.id), part]),
      )
    : value;
}

/** A list of ids tells a reader no more than how many there are. */
function toldValue(name: string, value: unknown, words: RecordWords): string {
  if (Array.isArray(value)) {
    const isIds = value.every((each) => typeof each === 'string' && UUID.test(each));
    const told = (each: unknown) => (name === 'include' ? PARTS[String(each)] : null) ?? valueWords(each);
    return isIds ? String(value.length) : value.map(told).join(', ');
  }
  return typeof value === 'object' ? valueWords(value) : words.value(name, value);
}
