// Written by `npm run catalogue` from the definition files beside it. Do not edit.
import type { PredictionEquation } from './prediction-equation.js';
import type { Norm } from './norm.js';
import { BRITTO_2013_BMI } from './equations/britto-2013-bmi.js';
import { CAMARRI_2006 } from './equations/camarri-2006.js';
import { CASANOVA_2011 } from './equations/casanova-2011.js';
import { CAZZOLETTI_2022 } from './equations/cazzoletti-2022.js';
import { CHETTA_2006 } from './equations/chetta-2006.js';
import { DOURADO_2011 } from './equations/dourado-2011.js';
import { DOURADO_2013 } from './equations/dourado-2013.js';
import { ENRIGHT_2003_CHS } from './equations/enright-2003-chs.js';
import { ENRIGHT_SHERRILL_1998 } from './equations/enright-sherrill-1998.js';
import { ENRIGHT_SHERRILL_1998_BMI } from './equations/enright-sherrill-1998-bmi.js';
import { GIBBONS_2001 } from './equations/gibbons-2001.js';
import { HILL_2011 } from './equations/hill-2011.js';
import { ITAKI_2018 } from './equations/itaki-2018.js';
import { IWAMA_2009 } from './equations/iwama-2009.js';
import { JENKINS_2009 } from './equations/jenkins-2009.js';
import { JURGENSEN_2011 } from './equations/jurgensen-2011.js';
import { MORALES_SATAN_2025_1MSTS } from './equations/morales-satan-2025-1msts.js';
import { OSSES_2010 } from './equations/osses-2010.js';
import { PROBST_2012 } from './equations/probst-2012.js';
import { TROOSTERS_1999 } from './equations/troosters-1999.js';
import { BOHANNON_2006_FIVE_REPETITION } from './norms/bohannon-2006-five-repetition.js';
import { HARRISON_2013_ISWT } from './norms/harrison-2013-iswt.js';
import { RIKLI_JONES_1999_CHAIR_STAND } from './norms/rikli-jones-1999-chair-stand.js';
import { STEADI_30_SECOND_CHAIR_STAND } from './norms/steadi-30-second-chair-stand.js';
import { STRASSMANN_2013 } from './norms/strassmann-2013.js';

export const PREDICTION_EQUATIONS: readonly PredictionEquation[] = [
  BRITTO_2013_BMI,
  CAMARRI_2006,
  CASANOVA_2011,
  CAZZOLETTI_2022,
  CHETTA_2006,
  DOURADO_2011,
  DOURADO_2013,
  ENRIGHT_2003_CHS,
  ENRIGHT_SHERRILL_1998,
  ENRIGHT_SHERRILL_1998_BMI,
  GIBBONS_2001,
  HILL_2011,
  ITAKI_2018,
  IWAMA_2009,
  JENKINS_2009,
  JURGENSEN_2011,
  MORALES_SATAN_2025_1MSTS,
  OSSES_2010,
  PROBST_2012,
  TROOSTERS_1999,
];

export const NORMS: readonly Norm[] = [
  BOHANNON_2006_FIVE_REPETITION,
  HARRISON_2013_ISWT,
  RIKLI_JONES_1999_CHAIR_STAND,
  STEADI_30_SECOND_CHAIR_STAND,
  STRASSMANN_2013,
];
