import { BODE_CITATION } from '../prediction/bode.js';
import { ENDURANCE_SPEED_CITATIONS } from '../prediction/endurance-speed.js';
import { PEAK_OXYGEN_UPTAKE_CITATION } from '../prediction/estimated-peak-oxygen-uptake.js';
import { ISWT_PROTOCOL_CITATIONS } from '../prediction/iswt-protocol.js';
import { equationName } from '../prediction/equation-name.js';
import type { Norm } from '../prediction/norm.js';
import type { PredictionEquation } from '../prediction/prediction-equation.js';
import { NORMS, PREDICTION_EQUATIONS } from '../prediction/registered.js';
import { usesOf } from './citation-use.js';
import type { CitationUse } from './citation-use.js';

/** What predictions cite: equations and their lower limits, norms, the shuttle walk protocol, what is derived from walks. */
export function predictionUses(): readonly CitationUse[] {
  return [
    ...PREDICTION_EQUATIONS.flatMap(ofEquation),
    ...NORMS.flatMap(ofNorm),
    ...usesOf(
      'levels of the incremental-shuttle-walk',
      'levels of the incremental shuttle walk',
      ISWT_PROTOCOL_CITATIONS,
    ),
    ...usesOf(
      'speed of the endurance-shuttle-walk',
      'speed of the endurance shuttle walk',
      ENDURANCE_SPEED_CITATIONS,
    ),
    {
      citation: PEAK_OXYGEN_UPTAKE_CITATION,
      use: 'estimate of peak-oxygen-uptake',
      words: 'estimate of peak oxygen uptake',
    },
    { citation: BODE_CITATION, use: 'index bode', words: 'BODE index' },
  ];
}

function ofEquation({ id, citation, lowerLimitRule }: PredictionEquation): readonly CitationUse[] {
  return [
    { citation, use: `equation ${id}`, words: `prediction equation ${equationName(id)}` },
    ...(lowerLimitRule === null
      ? []
      : [
          {
            citation: lowerLimitRule.citation,
            use: `lower limit of equation ${id}`,
            words: `lower limit of normal by ${equationName(id)}`,
          },
        ]),
  ];
}

function ofNorm({ id, title, citation, bands }: Norm): readonly CitationUse[] {
  const cells = bands.flatMap((band) => band.cells.map((cell) => cell.citation));
  return usesOf(`norm ${id}`, `norm: ${title}`, [citation, ...cells]);
}
