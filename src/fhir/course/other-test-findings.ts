import type {
  Assessment,
  AssessmentEntry,
  PhysicalTestEntry,
  SitToStandEntry,
} from '../../domain/assessment/assessment.js';
import { decimal } from '../../domain/exact/fraction.js';
import { findMeasure, findPhysicalTest, findSitToStandTest } from '../../domain/measures/catalogue.js';
import type { PhysicalTest } from '../../domain/measures/physical-test.js';
import type { SitToStandTest } from '../../domain/measures/sit-to-stand-test.js';
import { localCode, named } from '../elements.js';
import type { Element } from '../elements.js';
import { UNITS } from '../units.js';
import { amount, component, measureCode, measured, notDone } from './observation.js';
import type { Finding } from './observation.js';

/** Sit-to-stand tests with their conditions. */
export function sitToStandFindings({ sitToStands }: AssessmentEntry): readonly Finding[] {
  return sitToStands.flatMap((stand) => {
    const test = findSitToStandTest(stand.test);
    return test === undefined ? [] : [sitToStandFinding(stand, test)];
  });
}

function sitToStandFinding(stand: SitToStandEntry, test: SitToStandTest): Finding {
  const value = test.records === 'repetitions' ? stand.repetitions : stand.timeS;
  const { handsUsed, notDoneReason } = stand;
  const missing = notDoneReason === null ? {} : notDone(notDoneReason);
  return {
    key: `sit-to-stand:${stand.test}`,
    code: measureCode(test.measure),
    value: value === null ? missing : measured(decimal(value), test.measure),
    components: [
      ...placeOf(stand),
      ...component(named('Hands used'), handsUsed === null ? null : { valueBoolean: handsUsed }),
      ...component(named('Chair height'), amount(stand.chairHeightCm, UNITS.centimetres)),
    ],
  };
}

/** Tests of strength, balance and speed: each result, or why there is none. */
export function physicalFindings({ entry, physicalResults }: Assessment): readonly Finding[] {
  return entry.physicalTests.flatMap((recorded) => {
    const test = findPhysicalTest(recorded.test);
    if (test === undefined) return [];
    const components = physicalComponents(recorded, test);
    const results = physicalResults.filter((result) => result.test === recorded.test);
    if (results.length === 0) {
      const value = recorded.notDoneReason === null ? {} : notDone(recorded.notDoneReason);
      return [{ key: `physical:${test.id}`, code: named(test.name), value, components }];
    }
    return results.flatMap(({ measure: id, value }): readonly Finding[] => {
      const measure = findMeasure(id);
      if (measure === undefined) return [];
      return [
        {
          key: `physical:${test.id}:${id}`,
          code: measureCode(measure),
          value: measured(value, measure),
          components,
        },
      ];
    });
  });
}

function physicalComponents(recorded: PhysicalTestEntry, test: PhysicalTest): readonly Element[] {
  const conditions = test.conditions.flatMap(({ id, label }) => {
    const value = recorded.conditions[id];
    return value === undefined
      ? []
      : component(named(label), { valueCodeableConcept: localCode('test-condition', value) });
  });
  const parts = test.parts.flatMap(({ id, label }) => {
    const part = recorded.parts?.[id];
    if (part === undefined) return [];
    return component(
      named(label),
      part === 'unable' ? { valueString: 'unable' } : amount(part, UNITS.seconds),
    );
  });
  return [...placeOf(recorded), ...conditions, ...parts];
}

function placeOf({ place }: Pick<PhysicalTestEntry, 'place'>): readonly Element[] {
  return component(named('Place'), { valueCodeableConcept: localCode('test-place', place) });
}
