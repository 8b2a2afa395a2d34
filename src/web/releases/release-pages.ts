import type { Web, WebApp } from '../web.js';
import { draftPages } from './draft-page.js';
import { releaseListPage } from './release-list-page.js';
import { releasePage } from './release-page.js';

/** The summaries that leave the team: a lead drafts and releases them, a commissioner reads its own. */
export function releasePages(app: WebApp, web: Web): void {
  releaseListPage(app, web);
  draftPages(app, web);
  releasePage(app, web);
}
