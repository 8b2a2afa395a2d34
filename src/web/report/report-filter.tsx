import { periodWords } from '../../domain/calendar/period-words.js';
import { financialYear, parsePeriod, quarterOf } from '../../domain/calendar/period.js';
import { addDays, partsOf } from '../../domain/calendar/plain-date.js';
import type { PlainDate } from '../../domain/calendar/plain-date.js';
import { DELIVERY_MODES, DIAGNOSES, PATHWAYS } from '../../domain/referral/closed-sets.js';
import { DIAGNOSIS_WORDS, MODE_WORDS, PATHWAY_WORDS } from '../../domain/referral/words.js';
import type { Place } from '../../usecases/providers.js';
import type { AskedReport } from '../../usecases/reports/report-request.js';
import { Checkbox, Select } from '../components/choices.js';
import type { Choice } from '../components/choices.js';
import { DateField } from '../components/date-field.js';
import { Button } from '../components/form.js';
import { choicesOf } from '../components/words.js';
import { typedDate } from '../forms/date-entry.js';
import type { TypedDate } from '../forms/date-entry.js';
import { errorAt } from '../forms/form-errors.js';
import type { FormErrors } from '../forms/form-errors.js';
import type { ReportAddress } from './report-address.js';

interface FilterProps {
  readonly address: ReportAddress;
  readonly today: PlainDate;
  readonly sites: readonly Place[];
  readonly commissioners: readonly Place[];
  readonly errors: FormErrors;
}

/** What the report is of: a form that is sent into the address, so that a report can be kept as a bookmark. */
export function ReportFilter({ address, today, sites, commissioners, errors }: FilterProps): JSX.Element {
  const { asked, typed } = address;
  const period = parsePeriod(asked.period);
  const isOfDates = period?.kind === 'dates';
  const isUnfolded = errors.length > 0 || isOfDates || isNarrowed(asked);
  return (
    <form method="get" action="/report" class="panel not-printed" aria-label="What the report is of">
      <div class="row">
        <Select
          name="period"
          label="Period"
          value={isOfDates ? '' : asked.period}
          {...(isOfDates ? { none: 'Two dates, below' } : {})}
          choices={periodChoices(today, isOfDates ? null : asked.period)}
          error={errorAt(errors, 'period')}
        />
        <div class="actions">
          <Button kind="primary">Show the report</Button>
          <a href="/report">Latest closed quarter of everybody</a>
        </div>
      </div>
      <details open={isUnfolded}>
        <summary>Narrow the report, give two dates, or an earlier data cut</summary>
        <div class="row">
          <PlaceSelect name="siteId" label="Site" none="Every site" value={asked.siteId} places={sites} />
          <PlaceSelect
            name="commissionerId"
            label="Commissioner"
            none="Every commissioner"
            value={asked.commissionerId}
            places={commissioners}
          />
          <Select
            name="diagnosis"
            label="Diagnosis"
            none="Every diagnosis"
            value={asked.diagnosis ?? null}
            choices={choicesOf(DIAGNOSES, DIAGNOSIS_WORDS)}
          />
          <Select
            name="pathway"
            label="Pathway"
            none="Every pathway"
            value={asked.pathway ?? null}
            choices={choicesOf(PATHWAYS, PATHWAY_WORDS)}
          />
          <Select
            name="mode"
            label="Mode of delivery"
            none="Every mode"
            value={asked.mode ?? null}
            choices={choicesOf(DELIVERY_MODES, MODE_WORDS)}
          />
          <Checkbox
            name="firstReferralsOnly"
            label="First referrals only"
            isTicked={asked.firstReferralsOnly === true}
          />
        </div>
        <div class="row">
          <DateField
            name="from"
            label="First day"
            value={shown(typed.from, isOfDates ? period.firstDay : null)}
            error={errorAt(errors, 'from')}
          />
          <DateField
            name="to"
            label="Last day"
            value={shown(typed.to, isOfDates ? period.lastDay : null)}
            error={errorAt(errors, 'to')}
          />
          <DateField
            name="cut"
            label="Data cut"
            hint="The last day that is counted; today where it is empty"
            value={shown(typed.cut, asked.asAt ?? null)}
            error={errorAt(errors, 'cut') ?? errorAt(errors, 'asAt')}
          />
        </div>
      </details>
    </form>
  );
}

interface PlaceSelectProps {
  readonly name: string;
  readonly label: string;
  readonly none: string;
  readonly value: string | undefined;
  readonly places: readonly Place[];
}

function PlaceSelect({ name, label, none, value, places }: PlaceSelectProps): JSX.Element {
  const choices = places.map(({ id, name: words }) => ({ value: id, label: words }));
  return <Select name={name} label={label} none={none} value={value ?? null} choices={choices} />;
}

/** Whether anything but the period was chosen. */
function isNarrowed({ period: _period, ...rest }: AskedReport): boolean {
  return Object.values(rest).some((value) => value !== undefined);
}

/** What was typed, or else the date that the report is of. */
function shown(typed: TypedDate, date: PlainDate | null): TypedDate {
  return typed.day === '' && typed.month === '' && typed.year === '' ? typedDate(date) : typed;
}

const QUARTERS_OFFERED = 13;
const YEARS_OFFERED = 4;

/** The quarter of today and those before it, then years; whatever is shown is among them. */
function periodChoices(today: PlainDate, shownPeriod: string | null): readonly Choice[] {
  const quarters: Choice[] = [];
  for (let day = today; quarters.length < QUARTERS_OFFERED;) {
    const quarter = quarterOf(day);
    const isOver = quarter.lastDay < today;
    const words = periodWords(quarter);
    quarters.push({ value: quarter.label, label: isOver ? words : `${words}, not over` });
    day = addDays(quarter.firstDay, -1);
  }
  const { year, month } = partsOf(today);
  const latest = month >= 4 ? year : year - 1;
  const years = Array.from({ length: YEARS_OFFERED }, (_, index) => financialYear(latest - index)).map(
    (each) => ({
      value: each.label,
      label: `Year ${periodWords(each)}${each.lastDay < today ? '' : ', not over'}`,
    }),
  );
  const offered = [...quarters, ...years];
  if (shownPeriod === null || offered.some(({ value }) => value === shownPeriod)) return offered;
  return [{ value: shownPeriod, label: shownPeriod }, ...offered];
}
