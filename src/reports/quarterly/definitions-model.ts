import type { ChosenThreshold } from '../../domain/change/choose-threshold.js';
import type { EvidenceStatus } from '../../domain/evidence/citation.js';
import type { CompletionReading } from '../../domain/settings/team-settings.js';

/** The rules and figures that the report was counted by. */
export interface DefinitionsUsed {
  readonly completionReading: CompletionReading;
  readonly rules: readonly RuleUsed[];
  readonly thresholds: readonly (ThresholdUse & { readonly measureId: string; readonly shortName: string })[];
  readonly equations: readonly EquationUsed[];
  /** How intervals and quartiles are worked out, in words. */
  readonly methods: readonly string[];
}

/** One rule; a rule of several figures names each denominator it was used with. */
export interface RuleUsed {
  readonly ruleId: string;
  readonly numerator: string;
  readonly denominators: readonly string[];
  readonly exclusions: readonly string[];
  readonly source: Source;
}

export interface EquationUsed {
  readonly equationId: string;
  readonly measureId: string;
  readonly title: string;
  readonly population: string;
  readonly agesStudiedYears: { readonly min: number | null; readonly max: number | null };
  readonly cautions: readonly string[];
  readonly source: Source;
}

/** A threshold that judged pairs of one measure. */
export interface ThresholdUse {
  readonly thresholdId: string;
  readonly purpose: 'improvement' | 'deterioration';
  readonly value: number;
  readonly unit: string;
  /** What it amounts to on the steps of the measure, in words. */
  readonly amountsTo: string;
  readonly population: string;
  readonly chosenBy: ChosenThreshold['chosenBy'];
  /** All pairs judged by it, and those of them with a diagnosis it was not found in. */
  readonly pairs: number;
  readonly pairsOfAnotherDiagnosis: number;
  readonly source: Source;
}

/** Where a figure comes from, and the mark that must stand beside it where the source was not read. */
export interface Source {
  readonly text: string;
  readonly doi: string | null;
  readonly status: EvidenceStatus;
  readonly mark: string | null;
}
