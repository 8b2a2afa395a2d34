import fastifyFormbody from '@fastify/formbody';
import { fastifyKitaHtml } from '@kitajs/fastify-html-plugin';
import { installCsrf } from './csrf.js';
import { installErrorPages } from './error-page.js';
import { definitionPages } from './definitions/definition-pages.js';
import { installFormKeys } from './forms/form-keys.js';
import { installHeaders } from './headers.js';
import { installPageGuard } from './page-guard.js';
import { accountPages } from './account/account-pages.js';
import { secondFactorPages } from './account/second-factor-pages.js';
import { chapterPages } from './report/chapter-pages.js';
import { entriesInErrorPage } from './report/entries-in-error-page.js';
import { figurePages } from './report/figure-pages.js';
import { reportPages } from './report/report-pages.js';
import { invitationPages } from './sign-in/invitation-pages.js';
import { providerPages } from './sign-in/provider-pages.js';
import { signInPages } from './sign-in/sign-in-pages.js';
import { signOutRoute } from './sign-in/sign-out.js';
import { entryRoutes } from './assessment-entry/entry-routes.js';
import { correctionPage } from './assessment-entry/correction-page.js';
import { recordedPage } from './assessment-entry/recorded-page.js';
import { closingPages } from './closing/closing-pages.js';
import { letterPage } from './closing/letter-page.js';
import { cautionsPage } from './cautions/cautions-page.js';
import { markingPages } from './corrections/marking-pages.js';
import { mergePages } from './merging/merge-pages.js';
import { mergesPages } from './merging/merges-pages.js';
import { startPage } from './start/start-page.js';
import { classPage } from './classes/class-page.js';
import { classesPages } from './classes/classes-pages.js';
import { registrationPages } from './register/registration-pages.js';
import { OFFERS } from './steps/offers.js';
import { PLANNED_START } from './steps/planned-start.js';
import { stepRoutes } from './steps/step-routes.js';
import { TRIAGE } from './steps/triage.js';
import { releasePages } from './releases/release-pages.js';
import { searchPages } from './search/search-pages.js';
import { workListPage } from './work-list/work-list-page.js';
import { referralPages } from './referral/referral-page.js';
import { exportPages } from './exports/export-page.js';
import { importPages } from './imports/import-pages.js';
import { installUploads } from './forms/uploads.js';
import { installUnsentForms } from './unsent/install-unsent.js';
import { unsentForms } from './unsent/unsent-forms.js';
import { teamPages } from './team/team-pages.js';
import type { Web, WebApp } from './web.js';

/** Larger sheets come in by the command. */
const MOST_UPLOAD_BYTES = 16 * 1024 * 1024;

/**
 * Installs the pages: their headers, their forms, the guard, and the routes of each place.
 *
 * To be registered in a scope of its own: forms are read here and nowhere else, and JSON is not.
 */
export async function installWeb(app: WebApp, web: Web): Promise<void> {
  app.removeAllContentTypeParsers();
  await app.register(fastifyFormbody);
  await installUploads(app, MOST_UPLOAD_BYTES);
  await app.register(fastifyKitaHtml);
  await installHeaders(app);
  await installCsrf(app);
  const unsent = unsentForms(web.context.clock);
  installPageGuard(app, web, unsent);
  installUnsentForms(app, unsent);
  installFormKeys(app, web);
  installErrorPages(app, web);
  signInPages(app, web);
  providerPages(app, web);
  signOutRoute(app, web);
  invitationPages(app, web);
  accountPages(app, web);
  secondFactorPages(app, web);
  referralPages(app, web);
  importPages(app, web);
  exportPages(app, web);
  teamPages(app, web);
  definitionPages(app, web);
  startPage(app);
  workListPage(app, web);
  searchPages(app, web);
  releasePages(app, web);
  classesPages(app, web);
  classPage(app, web);
  entryRoutes(app, web);
  closingPages(app, web);
  letterPage(app, web);
  recordedPage(app, web);
  correctionPage(app, web);
  reportPages(app, web);
  chapterPages(app, web);
  figurePages(app, web);
  entriesInErrorPage(app, web);
  registrationPages(app, web);
  for (const step of [TRIAGE, OFFERS, PLANNED_START]) stepRoutes(app, web, step);
  markingPages(app, web);
  cautionsPage(app, web);
  mergePages(app, web);
  mergesPages(app, web);
}
