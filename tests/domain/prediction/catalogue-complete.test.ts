import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Citation, evidenceMark } from '../../../src/domain/evidence/citation.js';
import { FIVE_REPETITION_SIT_TO_STAND } from '../../../src/domain/measures/sit-to-stand/five-repetition-sit-to-stand.js';
import { ONE_MINUTE_SIT_TO_STAND } from '../../../src/domain/measures/sit-to-stand/one-minute-sit-to-stand.js';
import { THIRTY_SECOND_SIT_TO_STAND } from '../../../src/domain/measures/sit-to-stand/thirty-second-sit-to-stand.js';
import { INCREMENTAL_SHUTTLE_WALK } from '../../../src/domain/measures/walk-tests/incremental-shuttle-walk.js';
import { SIX_MINUTE_WALK } from '../../../src/domain/measures/walk-tests/six-minute-walk.js';
import { findEquation } from '../../../src/domain/prediction/catalogue.js';
import type { PredictionInput } from '../../../src/domain/prediction/prediction-equation.js';
import { NORMS, PREDICTION_EQUATIONS } from '../../../src/domain/prediction/registered.js';
import { DEFAULT_TEAM_SETTINGS } from '../../../src/domain/settings/team-settings.js';

const MEASURE_IDS = [
  FIVE_REPETITION_SIT_TO_STAND,
  ONE_MINUTE_SIT_TO_STAND,
  THIRTY_SECOND_SIT_TO_STAND,
  INCREMENTAL_SHUTTLE_WALK,
  SIX_MINUTE_WALK,
].map((test) => test.measure.id);

const STATUSES = [
  'retrieved',
  'retrieved-indirect',
  'value-from-memory',
  'from-memory',
  'common-practice',
  'derived',
];

/** What is missing in a citation; empty where nothing is. */
function faultsOf(citation: Citation): readonly string[] {
  return [
    /^[a-z0-9-]+$/.test(citation.id) ? '' : 'id',
    citation.text.trim().length >= 10 ? '' : 'source',
    STATUSES.includes(citation.status) ? '' : 'status',
    citation.doi === null || /^10\.\d{4,}\/\S+$/.test(citation.doi) ? '' : 'doi',
  ].filter((fault) => fault !== '');
}

/** The published check of an entry: it must name its source, import the definition and expect something. */
function publishedCheckFaults(id: string, folder: 'equations' | 'norms'): readonly string[] {
  const path = `tests/published/${id}.test.ts`;
  if (!existsSync(path)) return [`${path} is absent`];
  const text = readFileSync(path, 'utf8');
  return [
    /^\/\/ Sources?: \S/.test(text) ? '' : 'its first line names no source',
    text.includes(`/prediction/${folder}/${id}.js'`) ? '' : 'it does not import the definition',
    text.includes('Tolerance') || text.includes('tolerance') ? '' : 'it states no tolerance',
    folder === 'norms' || (text.match(/isBeyondAges:/g) ?? []).length >= 6
      ? ''
      : 'it has fewer than six people',
  ].filter((fault) => fault !== '');
}

function definitionFiles(folder: 'equations' | 'norms'): readonly string[] {
  return readdirSync(`src/domain/prediction/${folder}`).map((file) => file.replace(/\.ts$/, ''));
}

describe('every prediction equation', () => {
  it('is registered, and nothing else is', () => {
    expect(PREDICTION_EQUATIONS.map((equation) => equation.id).sort()).toEqual(
      [...definitionFiles('equations')].sort(),
    );
  });

  it.each(PREDICTION_EQUATIONS.map((equation) => [equation.id, equation] as const))(
    '%s has a source, a status and a published check',
    (id, equation) => {
      expect(faultsOf(equation.citation)).toEqual([]);
      if (equation.lowerLimitRule !== null) {
        expect(faultsOf(equation.lowerLimitRule.citation)).toEqual([]);
        expect(equation.lowerLimitRule.text).not.toBe('');
      }
      expect(publishedCheckFaults(id, 'equations')).toEqual([]);
    },
  );

  it.each(PREDICTION_EQUATIONS.map((equation) => [equation.id, equation] as const))(
    '%s says for whom and how: measure, population, size, formula, cautions, ages',
    (_, equation) => {
      expect(MEASURE_IDS).toContain(equation.measureId);
      for (const text of [equation.title, equation.population, equation.n, equation.formula]) {
        expect(text.trim()).not.toBe('');
      }
      expect(equation.cautions.length).toBeGreaterThan(0);
      const { min, max, status } = equation.agesStudiedYears;
      expect(status === null).toBe(min === null && max === null);
      // A coefficient from memory says so in words too.
      if (equation.citation.status === 'value-from-memory') {
        expect(evidenceMark(equation.citation.status)).toBe('from memory, check before use');
        expect(equation.cautions.join(' ')).toContain('remembered');
      }
    },
  );

  it.each(PREDICTION_EQUATIONS.map((equation) => [equation.id, equation] as const))(
    '%s reads exactly the inputs that it names, over both sexes',
    (_, equation) => {
      const read = new Set<string>();
      for (const sexAtBirth of ['female', 'male'] as const) {
        const person: PredictionInput = {
          sexAtBirth,
          ageYears: 60,
          heightCm: 170,
          weightKg: 70,
          peakHeartRatePercent: 75,
          isActive: true,
        };
        const watched = new Proxy(person, {
          get: (target, name, receiver): unknown => {
            read.add(String(name));
            return Reflect.get(target, name, receiver);
          },
        });
        const { lowerLimit } = equation.predict(watched);
        // A limit stands with its rule, and only with it.
        expect(lowerLimit === null).toBe(equation.lowerLimitRule === null);
      }
      // Destructuring reads what is named in the signature; nothing may be named in vain either.
      expect([...read].sort()).toEqual([...equation.needs].sort());
    },
  );

  it('has no default whose coefficients were not read', () => {
    for (const [measureId, id] of Object.entries(DEFAULT_TEAM_SETTINGS.equations)) {
      expect(findEquation(id)).toMatchObject({ measureId, citation: { status: 'retrieved' } });
    }
  });

  it('leaves out what its sources leave open', () => {
    // Unresolved coding of sex; no constant printed; doubtful sign and coefficient; coefficients unconfirmed.
    for (const id of ['agarwal-2016', 'azman-2023', 'masmoudi', 'vilarinho-2024-1msts']) {
      expect(findEquation(id)).toBeNull();
    }
  });
});

describe('every norm', () => {
  it('is registered, and nothing else is', () => {
    expect(NORMS.map((norm) => norm.id).sort()).toEqual([...definitionFiles('norms')].sort());
  });

  it.each(NORMS.map((norm) => [norm.id, norm] as const))(
    '%s has a source and a status for each cell, and a published check',
    (id, norm) => {
      expect(faultsOf(norm.citation)).toEqual([]);
      for (const cell of norm.bands.flatMap((band) => band.cells))
        expect(faultsOf(cell.citation)).toEqual([]);
      expect(publishedCheckFaults(id, 'norms')).toEqual([]);
    },
  );

  it.each(NORMS.map((norm) => [norm.id, norm] as const))(
    '%s has bands without gaps or overlaps for each sex, and the figure that flags',
    (_, norm) => {
      expect(MEASURE_IDS).toContain(norm.measureId);
      expect(norm.cautions.length).toBeGreaterThan(0);
      for (const sex of new Set(norm.bands.map((band) => band.sexAtBirth))) {
        const ofSex = norm.bands.filter((band) => band.sexAtBirth === sex);
        for (const [index, band] of ofSex.entries()) {
          expect(band.toYears).toBeGreaterThan(band.fromYears);
          const next = ofSex[index + 1];
          if (next !== undefined) expect(next.fromYears).toBe(band.toYears + 1);
          if (norm.flag !== null) {
            expect(band.cells.map((cell) => cell.statistic)).toContain(norm.flag.statistic);
          }
        }
      }
    },
  );
});
